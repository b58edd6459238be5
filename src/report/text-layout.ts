/** Columns that a text takes on a terminal: wide East Asian and emoji characters count two, marks none. */
export function columnsOf(text: string): number {
  if (PLAIN.test(text)) return text.length;
  let count = 0;
  for (const character of text) count += MARK.test(character) ? 0 : WIDE.test(character) ? 2 : 1;
  return count;
}

/** Printable ASCII and the blocks and lines that pictures are drawn with: one column each. */
const PLAIN = /^[\x20-\x7e\u2500-\u259f]*$/;
const MARK = /^[\p{Mn}\p{Me}\u200d\ufe0f]$/u;
const WIDE =
  /^[\p{Emoji_Presentation}\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\u3000-\u303f\uff01-\uff60]$/u;

/** @returns the text cut to a number of columns, an ellipsis in place of what is missing */
export function clipped(text: string, columnCount: number): string {
  if (columnsOf(text) <= columnCount) return text;
  let kept = "";
  for (const character of text) {
    if (columnsOf(kept) + columnsOf(character) > columnCount - 1) break;
    kept += character;
  }
  return `${kept}…`;
}

/** Words broken into lines of at most so many columns, continuation lines indented. */
export function wrapped(text: string, columnCount: number, indent = ""): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const next = line === "" ? word : `${line} ${word}`;
    if (line !== "" && columnsOf(next) > columnCount) {
      lines.push(line);
      line = indent + word;
    } else line = next;
  }
  return line === "" ? lines : [...lines, line];
}

/** One column of a table. */
export interface TableColumn {
  readonly head: string;
  readonly align: "left" | "right";
}

/**
 * A table as lines: a head, then a line a row, two blanks between columns; the last column is clipped to
 * what the width leaves.
 */
export function tableLines(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  columnCount: number,
): string[] {
  const all = [columns.map(({ head }) => head), ...rows];
  const widths = columns.map((_, index) => Math.max(...all.map((cells) => columnsOf(cells[index] ?? ""))));
  return all.map((cells) => {
    const padded = columns.map(({ align }, index) => {
      const cell = cells[index] ?? "";
      const gap = " ".repeat(Math.max(0, widths[index]! - columnsOf(cell)));
      return align === "right" ? gap + cell : cell + gap;
    });
    return clipped(padded.join("  ").trimEnd(), columnCount);
  });
}
