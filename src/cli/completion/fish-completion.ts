import type { Offer } from "../option-groups.js";
import { PROGRAM_OPTIONS } from "./completion-command.js";
import type { CompletionCommand, CompletionOption } from "./completion-command.js";

/** The script that fish reads from its completions folder. */
export function fishCompletion(commands: readonly CompletionCommand[]): string {
  const first = "__fish_use_subcommand";
  const lines = [
    "# fish completion for stillband. In ~/.config/fish/completions/stillband.fish",
    "complete -c stillband -f",
    ...PROGRAM_OPTIONS.map((option) => optionLine(first, option)),
    ...commands.map(({ name, summary }) => line(first, `-a ${name} -d ${quoted(summary)}`)),
    ...commands.flatMap(commandLines),
  ];
  return `${lines.join("\n")}\n`;
}

function commandLines({ name, options, operands }: CompletionCommand): string[] {
  const here = `__fish_seen_subcommand_from ${name}`;
  const { words = [], files } = operands;
  return [
    ...(words.length > 0 ? [line(here, `-a ${quoted(words.join(" "))}`)] : []),
    ...(files ? [line(here, "-F")] : []),
    ...options.map((option) => optionLine(here, option)),
  ];
}

function optionLine(condition: string, { flags, valueName, meaning, offer }: CompletionOption): string {
  const names = flags.map((flag) => (flag.startsWith("--") ? `-l ${flag.slice(2)}` : `-s ${flag.slice(1)}`));
  const value = valueName === null ? "" : ` ${valueOf(offer)}`;
  return line(condition, `${names.join(" ")}${value} -d ${quoted(meaning)}`);
}

/** A value is asked for: words, files (-r with -F), or whatever the reader types (-x). */
function valueOf({ words = [], files }: Offer): string {
  const known = words.length > 0 ? ` -a ${quoted(words.join(" "))}` : "";
  return `${files ? "-r -F" : "-x"}${known}`;
}

function line(condition: string, rest: string): string {
  return `complete -c stillband -n ${quoted(condition)} ${rest}`;
}

function quoted(text: string): string {
  return `'${text.replace(/[\\']/g, "\\$&")}'`;
}
