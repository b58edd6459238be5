import type { ExitCode } from "./exit.js";
import type { Io } from "./io.js";
import { runMain } from "./main.js";
import { COMMANDS } from "./program.js";
import { QUICK_RUNS } from "./quick-runs.js";
import { isVenueName } from "./venue-argument.js";

/**
 * The command line as a function. The commands that plan a venue are a file of their own in the build, read
 * only when one of them is named.
 * @param argv words after the program's name
 * @returns the exit code
 */
export async function main(argv: readonly string[], io: Io): Promise<ExitCode> {
  if (isQuick(argv)) return await runMain(argv, io, QUICK_RUNS);
  const whole = await import("./whole.js");
  return await whole.main(argv, io);
}

function isQuick(argv: readonly string[]): boolean {
  const name = argv.find((word) => !word.startsWith("-"));
  if (name === "link" && argv.some(isVenueName)) return false;
  return (
    name === undefined || Object.hasOwn(QUICK_RUNS, name) || COMMANDS.every((known) => known.name !== name)
  );
}
