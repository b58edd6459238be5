/**
 * Columns that a line takes on a terminal, counted apart from the program's own count: by grapheme cluster
 * (Unicode UAX #29, as Intl.Segmenter finds them); a cluster that holds an emoji presentation or a wide East
 * Asian character (UAX #11, the blocks used in the fixtures) takes two, any other one, a lone mark none.
 */
export function terminalColumns(line: string): number {
  let count = 0;
  for (const { segment } of new Intl.Segmenter("en", { granularity: "grapheme" }).segment(line)) {
    if (/^[\p{Mark}\u200b-\u200d\ufe0f]+$/u.test(segment)) continue;
    count +=
      /\p{Emoji_Presentation}|\ufe0f|[\u1100-\u115f\u2e80-\u9fff\uac00-\ud7a3\uf900-\ufaff\uff00-\uff60]|[\u{20000}-\u{3fffd}]/u.test(
        segment,
      )
        ? 2
        : 1;
  }
  return count;
}

/** The lines that are too wide, each behind its width; empty where all fit. */
export function tooWide(text: string, columnCount: number): string[] {
  return text
    .split("\n")
    .filter((line) => terminalColumns(line) > columnCount)
    .map((line) => `${terminalColumns(line)}: ${line}`);
}
