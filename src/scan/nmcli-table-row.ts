import type { NmcliKind } from "./nmcli-kinds.js";
import { parseOsAddress } from "./os-text-address.js";

/** Text that stands two blanks or more from what is beside it. */
export interface Segment {
  readonly text: string;
  readonly startIndex: number;
  readonly endIndex: number;
}

/** A line that may be a row of a table. */
export interface TableRow {
  readonly line: number;
  readonly text: string;
  readonly segments: readonly Segment[];
}

/** The segments of a line. */
export function segmentsOf(text: string): readonly Segment[] {
  return [...text.matchAll(/\S+(?: \S+)*/g)].map(({ 0: found, index }) => ({
    text: found,
    startIndex: index,
    endIndex: index + found.length,
  }));
}

/** Has a line nothing that a row has: no number, address, frequency or rate? */
export function isHeading(segments: readonly Segment[]): boolean {
  return !segments.some(({ text }) => /^\d{1,3}$/.test(text)) && !looksLikeRow(segments);
}

/** Is there an address, a frequency or a rate? */
export function looksLikeRow(segments: readonly Segment[]): boolean {
  return segments.some(({ text }) => parseOsAddress(text) !== null || FREQUENCY_OR_RATE.test(text));
}

const FREQUENCY_OR_RATE = /^(?:\d{4,5} \p{L}{3}|\d+ \p{L}+\/\p{L}+)$/u;

/**
 * A row's cells by column. The columns before the name are taken from the left, those behind it from the
 * right, and the rest is the name, blanks and all.
 * @param kinds of the columns, in their order
 * @returns null when there are too few, or too many
 */
export function tableCells(
  { text, segments }: TableRow,
  kinds: readonly NmcliKind[],
): readonly string[] | null {
  const nameIndex = kinds.includes("name") ? kinds.indexOf("name") : kinds.indexOf("nameHex");
  const leftKinds = nameIndex === -1 ? kinds : kinds.slice(0, nameIndex);
  const rightKinds = nameIndex === -1 ? [] : kinds.slice(nameIndex + 1);
  const left = take(leftKinds, segments);
  const rest = segments.slice(left.usedCount);
  const right = take([...rightKinds].reverse(), [...rest].reverse());
  const name = rest.slice(0, rest.length - right.usedCount);
  if (left.isShort || right.isShort || (nameIndex === -1 && name.length > 0)) return null;
  if (nameIndex === -1) return left.cells;
  const [first, last] = [name[0], name.at(-1)];
  const cells = [
    ...left.cells,
    first === undefined || last === undefined ? "" : text.slice(first.startIndex, last.endIndex),
    ...right.cells.reverse(),
  ];
  const markIndex = kinds.indexOf("inUse");
  if (cells[nameIndex] === "" && cells[markIndex] === "*") [cells[nameIndex], cells[markIndex]] = ["*", ""]; // a hidden name would stand as --
  return cells;
}

interface Taken {
  readonly cells: string[];
  readonly usedCount: number;
  readonly isShort: boolean;
}

/** Marks and bars may be blank: they are where the next text is none. */
function take(kinds: readonly NmcliKind[], segments: readonly Segment[]): Taken {
  const cells: string[] = [];
  let usedCount = 0;
  for (const kind of kinds) {
    const text = segments[usedCount]?.text;
    if (kind === "inUse" ? text !== "*" : kind === "bars" && !mayBeBars(text)) {
      cells.push("");
    } else if (text === undefined) return { cells, usedCount, isShort: true };
    else {
      cells.push(text);
      usedCount++;
    }
  }
  return { cells, usedCount, isShort: false };
}

/** Bars, whatever a code page made of them: nothing of letters and digits. */
function mayBeBars(text: string | undefined): boolean {
  return text !== undefined && (/[^\x20-\x7e]/.test(text) || !/[0-9A-Za-z-]/.test(text));
}
