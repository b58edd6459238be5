import { Command } from "commander";
import type { CommonOptions } from "./context.js";
import type { ExitCode } from "./exit.js";
import type { Io } from "./io.js";
import { runToEnd } from "./outcome.js";
import { COMMANDS, optionsOf } from "./program.js";
import type { Runs } from "./run.js";
import { scanArguments } from "./scan-arguments.js";
import { venueArgument } from "./venue-argument.js";
import { VERSION } from "./version.js";

/**
 * The command line, ready to parse: of the commands only the one that the first word names, or all where
 * it names none.
 * @param runs what runs the command that the first word names
 * @param ended is told the exit code of the command that ran
 * @param say takes help and usage errors as they come
 */
export function buildProgram(
  argv: readonly string[],
  io: Io,
  runs: Runs,
  ended: (code: ExitCode) => void,
  say: (text: string) => void,
): Command {
  const program = new Command("stillband")
    .description("Plans wireless DMX at 2.4 GHz from scans of the band.")
    .version(VERSION, "--version", "print the version")
    .option("--debug", "say where a bug happened");
  quieten(program, say).addHelpText("before", examplesText(COMMANDS.map(({ examples }) => examples[0]!)));
  const named = COMMANDS.filter(({ name }) => name === argv[0]);
  for (const definition of named.length > 0 ? named : COMMANDS) {
    const command = program
      .command(`${definition.name} ${definition.operands}`)
      .description(definition.summary);
    quieten(command, say).addHelpText("before", examplesText(definition.examples));
    if (!argv.includes(definition.name)) continue;
    for (const [flags, meaning] of optionsOf(definition)) addOption(command, flags, meaning);
    command.option("--debug", "say where a bug happened");
    command.action(async () => {
      const options = command.opts<CommonOptions>();
      const words = argv.slice(argv.indexOf(definition.name) + 1);
      const { venue, scanFlag } = definition;
      const files =
        (scanFlag === undefined ? venueArgument(venue, command.args) : undefined) ??
        scanArguments(words, command, scanFlag);
      const context = { io, options, words: command.args, files };
      ended(await runToEnd(context, `stillband/${definition.name}@1`, runs[definition.name]!));
    });
  }
  return program;
}

/** `...` in a flag: may be given several times, one value each. */
function addOption(command: Command, flags: string, meaning: string): void {
  if (!flags.includes("...")) {
    command.option(flags, meaning);
    return;
  }
  const collect = (value: string, before: readonly string[] | undefined): string[] => [
    ...(before ?? []),
    value,
  ];
  command.option(flags.replace("...", ""), `${meaning}; may be repeated`, collect);
}

/** Nothing printed, nothing exited: both are the caller's. */
function quieten(command: Command, say: (text: string) => void): Command {
  return command
    .exitOverride()
    .showSuggestionAfterError(true)
    .configureOutput({ writeOut: say, writeErr: say, getOutHelpWidth: () => 80, getErrHelpWidth: () => 80 });
}

function examplesText(examples: readonly string[]): string {
  return `Examples:\n${examples.map((example) => `  ${example}\n`).join("")}`;
}
