import { CommanderError } from "commander";
import { printable } from "../issues/index.js";
import { buildProgram } from "./build-program.js";
import { CliError, EXIT } from "./exit.js";
import type { ExitCode } from "./exit.js";
import { write } from "./io.js";
import type { Io } from "./io.js";
import { COMMANDS, SHELLS } from "./program.js";
import type { Runs } from "./run.js";
import { welcomeText } from "./welcome.js";

/**
 * The command line as a function: parses, runs one command, and tells how it ended. Never ends the process.
 * @param argv words after the program's name
 * @param runs what runs each command that `argv` may name
 * @returns the exit code
 */
export async function runMain(argv: readonly string[], io: Io, runs: Runs): Promise<ExitCode> {
  const said: string[] = [];
  try {
    if (argv.length === 0) {
      await write(io.out, welcomeText());
      return EXIT.ok;
    }
    let exitCode: ExitCode = EXIT.ok;
    const program = buildProgram(
      argv,
      io,
      runs,
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
  if (error instanceof CommanderError && error.exitCode === 0) {
    await write(io.out, said.join(""));
    return EXIT.ok;
  }
  const ended = error instanceof CommanderError ? misuse(error, said, argv) : error;
  if (ended instanceof CliError) {
    const next = ended.next === undefined ? "" : `\nTry: ${ended.next}`;
    await write(io.err, `${harmless(`stillband: ${ended.message}${next}`)}\n`);
    return ended.exitCode;
  }
  await write(io.err, harmless(bugReport(ended, argv)));
  return EXIT.bug;
}

/** What the parser found wrong, as an error of ours. */
function misuse(error: CommanderError, said: readonly string[], argv: readonly string[]): CliError {
  const definition = COMMANDS.find(({ name }) => name === argv[0]);
  const command = definition?.name ?? "";
  if (error.code === "commander.missingArgument" && definition?.venue === "always")
    return new CliError(
      EXIT.usage,
      `${command}: expected a venue file; stillband init writes one to start from`,
      `stillband ${command} venue.yaml`,
    );
  if (error.code === "commander.missingArgument" && command === "fit")
    return new CliError(
      EXIT.usage,
      "fit: expected the readings of a walk test: a CSV, or - for standard input",
      "stillband fit walk.csv",
    );
  if (error.code === "commander.missingArgument" && command === "completion")
    return new CliError(
      EXIT.usage,
      `completion: expected a shell: ${SHELLS.join(", ")}`,
      "stillband completion bash",
    );
  if (error.code === "commander.missingArgument")
    return new CliError(
      EXIT.usage,
      `${command}: expected a scan: name one or more scans, or - for standard input`,
      `stillband ${command} hall.csv`,
    );
  const text = said.join("").trim() || error.message;
  return new CliError(
    EXIT.usage,
    text.replace(/^error: /, ""),
    `stillband ${command}${command === "" ? "" : " "}--help`,
  );
}

/** Lines as they are, everything else that a terminal obeys made visible. */
function harmless(text: string): string {
  return text
    .split("\n")
    .map((line) => printable(line, Infinity))
    .join("\n");
}

function bugReport(error: unknown, argv: readonly string[]): string {
  const issue = error instanceof Error ? error.message : String(error);
  const stack = argv.includes("--debug") && error instanceof Error ? `\n${error.stack}` : "";
  return `stillband: this is a bug of ours: ${issue}${stack}\nPlease report it with the command and the files; --debug adds where it happened.\n`;
}
