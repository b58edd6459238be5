import { isOneSided, readFigure } from "./figure-reading.js";
import { figuresOf } from "./page-html.js";

/** A JSON pointer (RFC 6901), looked up in what a reader of the file gets. */
function at(file: unknown, pointer: string): unknown {
  return pointer
    .split("/")
    .slice(1)
    .reduce<unknown>(
      (value, step) => (value as Record<string, unknown>)[step.replaceAll("~1", "/").replaceAll("~0", "~")],
      file,
    );
}

/**
 * The figures of a page whose value isn't the plan file's, or whose text isn't that value rounded.
 * @param file the plan file as it is parsed
 * @throws {Error} where the page holds a figure that can't be read
 */
export function figureFaults(html: string, file: unknown): string[] {
  const figures = figuresOf(html);
  const writtenCount = html.match(/<data\b/g)?.length ?? 0;
  if (figures.length !== writtenCount) throw new Error(`${figures.length} of ${writtenCount} figures read`);
  return figures.flatMap(({ value, from, texts }) => {
    const number = at(file, from);
    if (typeof number !== "number" || String(number) !== value) return [`${from}: ${value}`];
    return texts
      .filter((text) => !isRounded(number, text, from))
      .map((text) => `${from}: ${value} shown as ${text}`);
  });
}

/** Whether a text says a number to the last place that it shows. */
export function isRounded(number: number, text: string, from: string): boolean {
  const read = readFigure(text, from);
  if (read.isBound) return number < read.value + read.halfStep;
  return Math.abs(read.value - number) <= read.halfStep * (isOneSided(from) ? 2 : 1) + 1e-9;
}
