import { FILES } from "../option-groups.js";
import type { Offer, Option } from "../option-groups.js";
import { COMMANDS, optionsOf } from "../program.js";

/** An option as a shell sees it. */
export interface CompletionOption {
  /** With their dashes, the long one last. */
  readonly flags: readonly string[];
  /** What stands in angles for its value; null for a switch. */
  readonly valueName: string | null;
  readonly mayRepeat: boolean;
  readonly meaning: string;
  readonly offer: Offer;
}

/** A command as a shell sees it. */
export interface CompletionCommand {
  readonly name: string;
  readonly summary: string;
  readonly options: readonly CompletionOption[];
  readonly operands: Offer;
}

/** Every command, from the table that parsing and help come from, and what the parser adds to it. */
export function completionCommands(): CompletionCommand[] {
  const named = COMMANDS.map(({ name, summary, options, offer = FILES }) => ({
    name,
    summary,
    options: [...optionsOf({ options }), ...ADDED].map(completionOption),
    operands: offer,
  }));
  const help = { words: COMMANDS.map(({ name }) => name) };
  return [...named, { name: "help", summary: "display help for command", options: [], operands: help }];
}

const ADDED: readonly Option[] = [
  ["--debug", "say where a bug happened"],
  ["-h, --help", "display help for command"],
];

/** What stands before a command's name. */
export const PROGRAM_OPTIONS: readonly CompletionOption[] = [
  completionOption(["--version", "print the version"]),
  ...ADDED.map(completionOption),
];

function completionOption([written, meaning, offer = {}]: Option): CompletionOption {
  const valueName = /<(.+?)(?:\.\.\.)?>/.exec(written)?.[1] ?? null;
  const flags = written.replace(/\s*<.*>/, "").split(", ");
  return { flags, valueName, mayRepeat: written.includes("..."), meaning, offer };
}
