import { LONGEST_RECORD_COUNT } from "./scan-limits.js";

/** One physical line of a text, without its end. */
export interface TextLine {
  /** 1-based. */
  readonly line: number;
  readonly text: string;
  /** The text ends here, without a line end. */
  readonly isTorn: boolean;
  /** The line is longer than is read: it is empty here, and the last. */
  readonly isTooLong: boolean;
}

/**
 * Lines of a text as it arrives. A line ends with LF, CR LF or a lone CR.
 * @param pieces the text, cut anywhere: the lines don't depend on where
 */
export async function* textLines(
  pieces: AsyncIterable<string>,
): AsyncGenerator<readonly TextLine[], void, undefined> {
  let rest = "";
  let line = 1;
  for await (const piece of pieces) {
    const texts = (rest + piece).split(/\r\n|\n|\r(?!$)/);
    rest = texts.pop()!;
    const lines = texts.map((text, index) => textLine(line + index, text));
    line += lines.length;
    const tooLong = lines.find(({ isTooLong }) => isTooLong);
    yield tooLong === undefined ? lines : lines.slice(0, lines.indexOf(tooLong) + 1);
    if (tooLong !== undefined) return;
    if (rest.length > LONGEST_RECORD_COUNT + 1) return yield [textLine(line, rest)];
  }
  if (rest === "") return;
  const isTorn = !rest.endsWith("\r");
  yield [{ ...textLine(line, isTorn ? rest : rest.slice(0, -1)), isTorn }];
}

function textLine(line: number, text: string): TextLine {
  const isTooLong = text.length > LONGEST_RECORD_COUNT;
  return { line, text: isTooLong ? "" : text, isTorn: false, isTooLong };
}
