import type { Command } from "commander";
import { printable } from "../issues/index.js";
import { CliError, EXIT } from "./exit.js";

/** A scan file to read, with the fill for its blank cells. */
export interface ScanArgument extends NamedScan {
  /** Not named itself: it lies in a folder or matches a pattern that was. */
  readonly found?: boolean;
}

/** As it stands on the command line. */
interface NamedScan {
  readonly path: string;
  readonly place?: string;
  readonly crowd?: "empty" | "part" | "full";
  readonly time?: string;
}

const FILLS = ["place", "crowd", "time"] as const;

/**
 * The scan files in order, each with the `--place`, `--crowd` and `--time` that stand before it: those options
 * fill the blank cells of the files named after them, and "" ends a fill.
 * @param words the words after the command's name, as typed
 * @param command tells which options take a value
 * @param flag the option that names a scan, where the words beside options name something else
 * @throws {CliError} exit 64 for a file without a name, or a fill that no file is named after
 */
export function scanArguments(words: readonly string[], command: Command, flag?: string): ScanArgument[] {
  const files: ScanArgument[] = [];
  const fill: { -readonly [Key in keyof NamedScan]: NamedScan[Key] } = { path: "" };
  let unused: string | null = null;
  let ended = false;
  const take = (path: string): void => {
    if (path === "") throw new CliError(EXIT.usage, 'expected a scan file, got ""', "name it, as hall.csv");
    files.push({ ...fill, path });
    unused = null;
  };
  for (let index = 0; index < words.length; index++) {
    const word = words[index]!;
    if (word === "--" && !ended) ended = true;
    else if (ended || word === "-" || !word.startsWith("-")) {
      if (flag === undefined) take(word);
    } else {
      const equals = word.startsWith("--") ? word.indexOf("=") : -1;
      const typed = equals < 0 ? word : word.slice(0, equals);
      const option = command.options.find(({ long, short }) => long === typed || short === typed.slice(0, 2));
      const inline =
        equals < 0
          ? option?.short === typed.slice(0, 2) && typed.length > 2 && !typed.startsWith("--")
          : true;
      const takesNext = option?.required === true && !inline;
      const value = equals < 0 ? (words[index + 1] ?? "") : word.slice(equals + 1);
      const name = FILLS.find((candidate) => typed === `--${candidate}`);
      if (name !== undefined) {
        setFill(fill, name, value);
        if (value !== "") unused = `${typed} ${value}`;
      }
      if (typed === flag) take(value);
      if (takesNext) index++;
    }
  }
  if (unused !== null) throw fillsNothing(unused);
  return files;
}

function setFill(fill: Record<string, string>, name: string, value: string): void {
  if (value === "") delete fill[name];
  else fill[name] = value;
}

function fillsNothing(option: string): CliError {
  const shown = printable(option, 60);
  return new CliError(
    EXIT.usage,
    `${shown}: expected a scan after it; it fills the blank cells of the files named after it`,
    `${shown} hall.csv`,
  );
}
