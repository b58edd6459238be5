import type { Fill } from "./fill.js";
import { IwBlock } from "./iw-block.js";
import { readIwBlock } from "./iw-reading.js";
import { sayMasked } from "./os-text-sink.js";
import { LONGEST_RECORD_COUNT } from "./scan-limits.js";
import type { ScanTally } from "./scan-tally.js";
import { dropStaleChannels } from "./stale-channels.js";
import { textLines } from "./text-lines.js";
import type { TextLine } from "./text-lines.js";

/**
 * Reads what `iw dev <if> scan` prints into a tally: one row a BSS block. What stands before the first
 * block and after the last (a prompt, other output) is passed over.
 * @source iw scan.c output format (Linux nl80211 tool), read
 */
export async function readIwScanText(
  pieces: AsyncIterable<string>,
  fill: Fill,
  tally: ScanTally,
): Promise<void> {
  const reader = new IwScanReader(fill, tally);
  for await (const lines of textLines(pieces)) for (const line of lines) reader.read(line);
  reader.finish();
  dropStaleChannels(tally);
}

class IwScanReader {
  private block: IwBlock | null = null;
  private blockCount = 0;
  private maskedCount = 0;
  private firstMaskedLine = 0;
  /** Columns by which the block's first line, and the first line within it, are indented. */
  private outerColumns = 0;
  private innerColumns: number | null = null;

  constructor(
    private readonly fill: Fill,
    private readonly tally: ScanTally,
  ) {}

  read({ line, text, isTorn, isTooLong }: TextLine): void {
    if (isTooLong) return this.stop(line);
    const trimmed = text.trim();
    if (trimmed === "") return;
    const columns = indentation(text);
    const address = addressOf(trimmed);
    if (address !== null) return this.startBlock(line, address, columns);
    if (this.block === null) return;
    this.innerColumns ??= columns > this.outerColumns || FIRST_LINES.test(trimmed) ? columns : Infinity;
    const isOutside = columns <= this.outerColumns && this.innerColumns > this.outerColumns;
    if (isOutside) return this.finishBlock();
    if (this.block.repeats(trimmed)) this.startBlock(line, null, this.outerColumns, this.innerColumns);
    this.block.add(trimmed, columns <= this.innerColumns, isTorn);
  }

  finish(): void {
    this.finishBlock();
    sayMasked(this.tally, this.maskedCount, this.firstMaskedLine);
  }

  private finishBlock(): void {
    const block = this.block;
    if (block === null) return;
    this.block = null;
    this.blockCount++;
    const result = readIwBlock(block, this.fill);
    if (result === "out of band") this.tally.outOfBand();
    else if ("code" in result) this.tally.reject(result, block.line, this.blockCount);
    else {
      if (result.bssid === null && this.maskedCount++ === 0) this.firstMaskedLine = block.line;
      this.tally.use(result);
    }
  }

  private startBlock(
    line: number,
    address: string | null,
    outerColumns: number,
    innerColumns: number | null = null,
  ): void {
    this.finishBlock();
    this.block = new IwBlock(line, address);
    [this.outerColumns, this.innerColumns] = [outerColumns, innerColumns];
  }

  private stop(line: number): void {
    this.finishBlock();
    const expected = `a line of at most ${LONGEST_RECORD_COUNT} characters`;
    this.tally.say({ code: "limit", severity: "error", line, expected, action: "stopped" });
  }
}

/** What a block may begin with where all indentation is lost. */
const FIRST_LINES = /^(?:tsf|freq|last seen|beacon interval|capability|signal)\b/i;

/** @returns the text that should be the address, when a line starts a block; `BSS Load` doesn't */
function addressOf(trimmed: string): string | null {
  const start = /^BSS\s+([^\s(]+)\s*(.*)$/.exec(trimmed);
  if (start === null) return null;
  const [, address = "", rest = ""] = start;
  const isAddress = /^[0-9a-f]{2}(?::[0-9a-f]{2}){5}$/i.test(address);
  const isCutAddress = rest === "" && /^[0-9a-f]{1,2}(?::[0-9a-f]{0,2}){0,5}$/i.test(address);
  return isAddress || isCutAddress || rest.startsWith("(on ") ? address : null;
}

/** Columns of white space in front, a tab reaching to the next multiple of eight. */
function indentation(text: string): number {
  let columns = 0;
  for (const character of text) {
    if (character === "\t") columns += 8 - (columns % 8);
    else if (character === " ") columns++;
    else break;
  }
  return columns;
}
