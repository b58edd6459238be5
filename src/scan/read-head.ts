import { LONGEST_RECORD_COUNT } from "./scan-limits.js";

/** The start of a text, and all of it. */
export interface Head {
  /** Up to the end of the first line that isn't blank, at least, unless that is longer than is read. */
  readonly head: string;
  readonly isWhole: boolean;
  /** The whole text, the head included. */
  readonly pieces: AsyncIterable<string>;
}

/** Reads the start of a text so that it can be judged, without losing it for the reader that follows. */
export async function readHead(rest: AsyncGenerator<string, void, undefined>): Promise<Head> {
  let head = "";
  let isWhole = false;
  while (!isWhole && head.length <= LONGEST_RECORD_COUNT && !hasWholeLine(head)) {
    const next = await rest.next();
    if (next.done === true) isWhole = true;
    else head += next.value;
  }
  return { head, isWhole, pieces: joined(head, rest) };
}

/** Has the first line that isn't blank ended, with a character after it that shows how? */
function hasWholeLine(head: string): boolean {
  const startIndex = head.search(/\S/);
  if (startIndex === -1) return false;
  const lengthCount = head.slice(startIndex).search(/[\r\n]/);
  return lengthCount !== -1 && startIndex + lengthCount + 1 < head.length;
}

async function* joined(head: string, rest: AsyncIterable<string>): AsyncGenerator<string, void, undefined> {
  yield head;
  yield* rest;
}
