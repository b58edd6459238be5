import { CommanderError } from "commander";
import { CliError, EXIT } from "./exit.js";
import type { ExitCode } from "./exit.js";
import { write } from "./io.js";
import type { Io } from "./io.js";
import { buildProgram, COMMANDS } from "./program.js";
import { WELCOME } from "./welcome.js";

/**
 * The command line as a function: parses, runs one command, and tells how it ended. Never ends the process.
 * @param argv words after the program's name
 * @returns the exit code
 */
export async function main(argv: readonly string[], io: Io): Promise<ExitCode> {
  const said: string[] = [];
  try {
    if (argv.length === 0) {
      await write(io.out, WELCOME);
      return EXIT.ok;
    }
    let exitCode: ExitCode = EXIT.ok;
    const program = buildProgram(
      argv,
      io,
      (code) => (exitCode = code),
      (text) => said.push(text),
    );
    await program.parseAsync([...argv], { from: "user" });
    return exitCode;
  } catch (error) {
    return await explain(error, said, argv, io);
  }
}

async function explain(
  error: unknown,
  said: readonly string[],
  argv: readonly string[],
  io: Io,
): Promise<ExitCode> {
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) {
      await write(io.out, said.join(""));
      return EXIT.ok;
    }
    const text = said.join("").trim() || error.message;
    await write(
      io.err,
      `stillband: ${text.replace(/^error: /, "")}\nTry: stillband ${commandOf(argv)}--help\n`,
    );
    return EXIT.usage;
  }
  if (error instanceof CliError) {
    const next = error.next === undefined ? "" : `\nTry: ${error.next}`;
    await write(io.err, `stillband: ${error.message}${next}\n`);
    return error.exitCode;
  }
  await write(io.err, bugReport(error, argv));
  return EXIT.bug;
}

function commandOf([first]: readonly string[]): string {
  return COMMANDS.some(({ name }) => name === first) ? `${first} ` : "";
}

function bugReport(error: unknown, argv: readonly string[]): string {
  const issue = error instanceof Error ? error.message : String(error);
  const stack = argv.includes("--debug") && error instanceof Error ? `\n${error.stack}` : "";
  return `stillband: this is a bug of ours: ${issue}${stack}\nPlease report it with the command and the files; --debug adds where it happened.\n`;
}
