import { LONGEST_RECORD_COUNT } from "./scan-limits.js";

/** The start of a text, and all of it. */
export interface Head {
  /** Up to the end of the first line that isn't blank, at least, unless that is longer than is read. */
  readonly head: string;
  readonly isWhole: boolean;
  /** The whole text, the head included. */
  readonly pieces: AsyncGenerator<string, void, undefined>;
}

/** Reads the start of a text so that it can be judged, without losing it for the reader that follows. */
export async function readHead(rest: AsyncGenerator<string, void, undefined>): Promise<Head> {
  let head = "";
  let isWhole = false;
  while (!isWhole && head.length <= 2 * LONGEST_RECORD_COUNT && !/\S[^\r\n]*[\r\n]+[^\r\n]/.test(head)) {
    const next = await rest.next();
    if (next.done === true) isWhole = true;
    else head += next.value;
  }
  return { head, isWhole, pieces: joined(head, rest) };
}

async function* joined(
  head: string,
  rest: AsyncGenerator<string, void, undefined>,
): AsyncGenerator<string, void, undefined> {
  try {
    yield head;
    yield* rest;
  } finally {
    await rest.return();
  }
}
