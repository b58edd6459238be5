import type { Issue } from "./issue.js";

/**
 * The sentence for an issue: where, what was expected, what stood there, what was done.
 * Control characters of the value are made visible; the value is cut at 60 characters.
 * @returns the sentence, without a line end
 * @example formatIssue({ code: "bad-cell", severity: "error", source: "scan.csv", line: 3, column: "signal_dbm", value: "n/a", expected: "a level in dBm", action: "row skipped" });
 * // => 'scan.csv:3 column "signal_dbm": expected a level in dBm, got "n/a" (row skipped)'
 */
export function formatIssue(issue: Issue): string {
  const line = issue.line === undefined ? "" : `:${issue.line}`;
  const column = issue.column === undefined ? "" : ` column "${printable(issue.column, 60)}"`;
  const where = `${printable(issue.source, 200)}${line}${column}`;
  const more =
    issue.count === undefined || issue.count < 2 ? "" : `, and ${issue.count - 1} more of this kind`;
  if (issue.action === "stated") return `${where}: ${issue.expected}${more}`;
  const got = issue.value === undefined ? "" : `, got "${printable(issue.value, 60)}"`;
  return `${where}: expected ${issue.expected}${got} (${issue.action})${more}`;
}

/**
 * Text from strangers made harmless for a terminal or a log: control, bidirectional and other format
 * characters are shown as escapes, and what is longer than `longestCount` characters is cut.
 * @param text anything that a stranger may have written
 * @param longestCount characters that are kept
 * @returns the text, harmless on a terminal
 * @example printable("guest\u001b[2J", 60); // => "guest\\u001b[2J"
 */
export function printable(text: string, longestCount: number): string {
  if (text.length <= longestCount && PLAIN.test(text)) return text;
  const shown = text.replace(
    UNSAFE,
    (character) => `\\u${character.codePointAt(0)!.toString(16).padStart(4, "0")}`,
  );
  const characters = Array.from(shown);
  return characters.length <= longestCount ? shown : `${characters.slice(0, longestCount - 1).join("")}…`;
}

const PLAIN = /^[\x20-\x7e]*$/;
const UNSAFE = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}\ufffe\uffff]/gu;
