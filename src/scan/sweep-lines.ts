import { LONGEST_RECORD_COUNT } from "./scan-limits.js";

/** Takes one line: bytes from `startIndex` up to, not including, `endIndex`; at least one byte follows. */
export type TakeLine = (bytes: Uint8Array, startIndex: number, endIndex: number, isTorn: boolean) => void;

const CARRIAGE_RETURN = 0x0d;
const SHORT_COUNT = 64;

/** Cuts bytes into lines as they arrive, without copying them but where a line straddles two chunks. */
export class SweepLines {
  /** A line is longer than is read: nothing more is taken. */
  isTooLong = false;
  private carry = new Uint8Array(4096);
  private carriedCount = 0;

  /** @param lineEnd the byte that ends a line; a carriage return before it is not part of the line */
  constructor(
    private readonly lineEnd: number,
    private readonly take: TakeLine,
  ) {}

  push(chunk: Uint8Array): void {
    let start = 0;
    if (this.carriedCount > 0) {
      const end = chunk.indexOf(this.lineEnd);
      this.keep(chunk, 0, end === -1 ? chunk.length : end + 1);
      if (end === -1 || this.isTooLong) return;
      this.give(this.carry, 0, this.carriedCount - 1, false);
      this.carriedCount = 0;
      start = end + 1;
    }
    for (let end; (end = this.endOf(chunk, start)) !== -1; start = end + 1)
      this.give(chunk, start, end, false);
    this.keep(chunk, start, chunk.length);
  }

  /** Where a line ends: short ones are found sooner by looking, long ones by the built-in search. */
  private endOf(chunk: Uint8Array, startIndex: number): number {
    const nearIndex = Math.min(chunk.length, startIndex + SHORT_COUNT);
    for (let at = startIndex; at < nearIndex; at++) if (chunk[at] === this.lineEnd) return at;
    return chunk.indexOf(this.lineEnd, nearIndex);
  }

  /** The input has ended: a last line without an end is given as torn. */
  finish(): void {
    if (this.carriedCount === 0 || this.isTooLong) return;
    const endIndex = this.carriedCount;
    this.keep(Uint8Array.of(this.lineEnd), 0, 1);
    this.give(this.carry, 0, endIndex, true);
    this.carriedCount = 0;
  }

  private give(bytes: Uint8Array, startIndex: number, endIndex: number, isTorn: boolean): void {
    if (endIndex - startIndex > LONGEST_RECORD_COUNT) this.isTooLong = true;
    if (this.isTooLong) return;
    const hasReturn = endIndex > startIndex && bytes[endIndex - 1] === CARRIAGE_RETURN;
    this.take(bytes, startIndex, hasReturn ? endIndex - 1 : endIndex, isTorn && !hasReturn);
  }

  private keep(chunk: Uint8Array, startIndex: number, endIndex: number): void {
    const neededCount = this.carriedCount + endIndex - startIndex;
    if (neededCount > LONGEST_RECORD_COUNT + 2) {
      this.isTooLong = true;
      return;
    }
    if (neededCount > this.carry.length) {
      const grown = new Uint8Array(Math.max(neededCount, 2 * this.carry.length));
      grown.set(this.carry.subarray(0, this.carriedCount));
      this.carry = grown;
    }
    this.carry.set(chunk.subarray(startIndex, endIndex), this.carriedCount);
    this.carriedCount = neededCount;
  }
}
