import { OS_TEXT_COMMANDS } from "./os-text-command.js";
import type { OsTextFormat } from "./os-text-command.js";
import type { ScanTally } from "./scan-tally.js";

/** What a text is that holds lines of several commands, in words. */
export function formatNames(formats: readonly OsTextFormat[]): string {
  const names = formats.map((format) => OS_TEXT_COMMANDS[format]);
  return `lines of several commands, ${names.join(" and ")}: give each a file of its own`;
}

/** Says that a few lines look like another command's and were passed over. */
export function sayStrays(formats: readonly OsTextFormat[], tally: ScanTally): void {
  const value = formats.map((format) => OS_TEXT_COMMANDS[format]).join(", ");
  const expected = "the output of one command; lines that look like another's are passed over";
  tally.say({ code: "ignored", severity: "note", value, expected, action: "value ignored" });
}
