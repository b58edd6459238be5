import { csvCells } from "./csv-cells.js";
import { csvRecordEnd } from "./csv-record-end.js";

const BLOCK_COUNT = 65_536;

/** One record of a table and the 1-based physical line on which it starts. */
export interface CsvRecord {
  readonly line: number;
  /** One a column; a blank line has a single empty cell. */
  readonly cells: readonly string[];
}

/** A record that can't be cut: `broken` is given up with the line it stands on, `limit` ends the reading. */
export interface CsvFault {
  readonly fault: "broken" | "limit";
  readonly line: number;
  /** The line as it stands; empty for `limit`. */
  readonly text: string;
}

/**
 * Records of a CSV text as it arrives, in blocks; a fault comes alone. Blank lines are records too, so
 * that lines can be counted. Memory is bounded by the longest record allowed, whatever the text's length.
 * @param pieces the text, cut anywhere: the records don't depend on where
 * @param delimiter one character
 */
export async function* csvRecords(
  pieces: AsyncIterable<string>,
  delimiter: string,
): AsyncGenerator<readonly CsvRecord[] | CsvFault, void, undefined> {
  let cut: Cut = { rest: "", line: 1, ended: false };
  for await (const piece of pieces) {
    const text = cut.rest + piece;
    cut = yield* cutRecords(text, cut.line, delimiter, false);
    if (cut.ended) return;
  }
  yield* cutRecords(cut.rest, cut.line, delimiter, true);
}

/** What is left of a text when all its whole records are cut off. */
export interface Cut {
  readonly rest: string;
  readonly line: number;
  readonly ended: boolean;
}

/** Cuts the whole records off a text, in blocks; what is left is returned. */
export function* cutRecords(
  text: string,
  line: number,
  delimiter: string,
  isLast: boolean,
): Generator<readonly CsvRecord[] | CsvFault, Cut, undefined> {
  let [blockIndex, index] = [0, 0];
  let lines: number[] = [];
  const block = (): readonly CsvRecord[] => {
    const [starts, rows] = [lines, csvCells(text.slice(blockIndex, index), delimiter)];
    [blockIndex, lines] = [index, []];
    return rows.map((cells, row) => ({ line: starts[row]!, cells }));
  };
  while (index < text.length) {
    const end = csvRecordEnd(text, index, delimiter, isLast);
    if (end.kind === "more") break;
    if (end.kind !== "record" && lines.length > 0) yield block();
    if (end.kind === "limit") {
      yield { fault: "limit", line, text: "" };
      return { rest: "", line, ended: true };
    }
    if (end.kind === "broken") {
      yield { fault: "broken", line, text: text.slice(index, end.endIndex).trimEnd() };
      blockIndex = end.endIndex;
    } else lines.push(line);
    index = end.endIndex;
    line += end.lineCount;
    if (index - blockIndex >= BLOCK_COUNT) yield block();
  }
  if (lines.length > 0) yield block();
  return { rest: text.slice(index), line, ended: false };
}
