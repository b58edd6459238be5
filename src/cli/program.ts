import { Command } from "commander";
import type { CommonOptions } from "./context.js";
import type { ExitCode } from "./exit.js";
import { HANG_OPTIONS } from "./hang-options.js";
import type { Io } from "./io.js";
import {
  COMMON,
  CROWD,
  FILES,
  LINK,
  PROFILE_WORDS,
  RADIO,
  REGION_WORDS,
  SCANS,
  SITE,
  SURVEY,
  VENUE,
  WIFI,
} from "./option-groups.js";
import type { Offer, Option } from "./option-groups.js";
import { runToEnd } from "./outcome.js";
import { PATCH_OPTIONS } from "./patch-options.js";
import type { Runs } from "./run.js";
import { scanArguments } from "./scan-arguments.js";
import { venueArgument } from "./venue-argument.js";

/** The shells that `completion` writes for. */
export const SHELLS = ["bash", "zsh", "fish"] as const;

/** One command: the single table that parsing, help and completion come from. */
export interface Definition {
  readonly name: string;
  readonly operands: string;
  readonly summary: string;
  readonly options: readonly Option[];
  readonly examples: readonly string[];
  /** Takes a venue file: always, or where its only operand is named like one; else scans. */
  readonly venue?: "always" | "maybe";
  /** What its operands may be, where that is not files alone. */
  readonly offer?: Offer;
}

export const COMMANDS: readonly Definition[] = [
  {
    name: "survey",
    operands: "<scan...>",
    summary: "what is on the band, and how far to trust it",
    options: [...SCANS, ...SURVEY, ...RADIO],
    examples: [
      "stillband survey hall.csv",
      "stillband survey --place hall --crowd full hall.txt --place foyer foyer.txt",
      "stillband survey visit-1/ 'visit-2/*.csv'",
    ],
  },
  {
    name: "channel",
    operands: "<scan...>",
    summary: "the radio channel to use, why, and how far the link goes",
    options: [...SCANS, ...SURVEY, ...RADIO, ...LINK, ...SITE, ...WIFI],
    examples: [
      "stillband channel empty.csv full.csv",
      "sudo iw dev wlan0 scan | stillband channel --place hall --crowd full -",
      "stillband channel full.csv --profile my-radio.yaml --region EU --distance 35m",
    ],
  },
  {
    name: "link",
    operands: "[venue-or-scan...]",
    summary: "link budget by distance, and the reach; of a venue, every receiver's",
    options: [
      ["--channel <number>", "radio channel (default the recommended, or the middle one)"],
      ["--system <name>", "of a venue, this system alone"],
      ["--receiver <name>", "of a venue, this receiver's budget line by line"],
      ...SCANS.map(([flags, meaning, offer]): Option =>
        flags.startsWith("--crowd")
          ? [flags, `${meaning}; of a venue, who is in (default full)`, offer]
          : [flags, meaning, offer],
      ),
      ...SURVEY,
      ...RADIO,
      ...LINK,
      ...SITE,
      ...CROWD,
    ],
    venue: "maybe",
    examples: [
      "stillband link",
      "stillband link venue.yaml",
      "stillband link venue.yaml --system hall --channel 13 --crowd empty",
      "stillband link --channel 13 full.csv --distances 10,20,30m",
      "stillband link --tx-antenna dipole --tx-height 3m --rx-height 8m --wall 6dB",
    ],
  },
  {
    name: "rooms",
    operands: "<venue>",
    summary: "a venue's rooms side by side, and the jointly best channels of its systems",
    options: [
      ["--time-limit <seconds>", "to search for the best joint plan and prove it (default 5)"],
      ...VENUE,
    ],
    venue: "always",
    examples: [
      "stillband rooms venue.yaml",
      "stillband rooms venue.yaml --crowd empty",
      "stillband rooms venue.yaml --region EU --time-limit 30 --json",
    ],
  },
  {
    name: "place",
    operands: "<venue>",
    summary: "where each transmitter of a venue goes, and what other places give up",
    options: [
      ["--system <name>", "this system alone"],
      ["--step <length>", "of the grid over its rooms' floors (default 0.5m)"],
      ["--height <length>", "of the grid's antenna above the floor (default 3m)"],
      ["--antenna <word>", "of the grid, as --tx-antenna of link (default the transmitter's, else a dipole)"],
      ["--candidates-only", "the places that the venue file names, no grid"],
      ["--grid", "the grid, no candidates"],
      ...VENUE,
    ],
    venue: "always",
    examples: [
      "stillband place venue.yaml",
      "stillband place venue.yaml --system hall --height 5m --antenna collinear:5",
      "stillband place venue.yaml --candidates-only --crowd empty",
    ],
  },
  {
    name: "form",
    operands: "[venue]",
    summary: "the blank survey form to print; with a venue file, pre-filled",
    options: [
      ["--html", "as a page that prints a room a sheet (as -o form.html does)"],
      ["--rooms <count>", "blank rooms (default 1; with a venue file, further ones)"],
      ["--points <count>", "blank ceiling points in each room (default 8)"],
    ],
    examples: [
      "stillband form --rooms 3 --points 12 -o form.html",
      "stillband form venue.yaml --html -o form.html",
      "stillband form --units ft",
    ],
  },
  {
    name: "fit",
    operands: "<readings>",
    summary: "a path-loss model of the building from a walk test",
    options: [
      ["--model <file>", "write the model to a file (as -o model.json does)", FILES],
      ["--venue <file>", "where its transmitters and receivers stand", FILES],
      ["--transmitter <name>", "only its readings; those that name none are its own"],
      ["--transmitter-at <x,y,z>", "where it stands, for readings with a position"],
      ["--not-heard-below <dbm>", "what the receiver still hears (else the lowest level heard)"],
      ["--frequency <mhz>", "at which was walked, kept in the model"],
      ["--ignore-line <line...>", "a reading to leave out, by its line in the file"],
      ["--without-walls", "fit no wall loss though walls were counted"],
      ["--confidence <share>", "of the intervals (default 0.95)"],
      ["--map <field=header...>", 'which column holds a field, as received_dbm="Level"'],
      ["--strict", "a rejected row is an error (exit 65)"],
      ...RADIO,
    ],
    examples: [
      "stillband fit walk.csv -o model.json",
      "stillband fit walk.csv --set tx_power_dbm=0 --not-heard-below -95",
      "stillband fit positions.csv --venue venue.yaml --transmitter hall",
    ],
  },
  {
    name: "patch",
    operands: "<venue>",
    summary: "DMX start addresses of a venue's luminaires, clashes, labels",
    options: PATCH_OPTIONS,
    venue: "always",
    examples: [
      "stillband patch venue.yaml",
      "stillband patch venue.yaml --spare 8 --reserve hall:1:481-512",
      "stillband patch venue.yaml --room foyer --labels",
      "stillband patch venue.yaml -o addresses.csv",
    ],
  },
  {
    name: "hang",
    operands: "<venue>",
    summary: "the crew's sheets: hang, circuits and cords, order, checks, trouble",
    options: HANG_OPTIONS,
    venue: "always",
    examples: [
      "stillband hang venue.yaml",
      "stillband hang venue.yaml --sheet hang --room hall --units ft",
      "stillband hang venue.yaml --pitch 35mm --spool 50m --set breaker=16",
      "stillband hang venue.yaml --sheet checks -o readings.csv",
    ],
  },
  {
    name: "convert",
    operands: "<scan...>",
    summary: "any scan that can be read, as one scan CSV",
    options: SCANS,
    examples: ["stillband convert --place hall --crowd empty hall.txt -o hall.csv"],
  },
  {
    name: "init",
    operands: "[scan...]",
    summary: "a venue file to start from; with scans, pre-filled",
    options: SCANS,
    examples: [
      "stillband init",
      "stillband init -o mill/venue.yaml --units ft",
      "stillband init --place hall --crowd full hall.txt --place foyer foyer.txt",
    ],
  },
  {
    name: "profiles",
    operands: "[name-or-file]",
    summary: "the radio profiles; of one, or a file, every figure; a region's rule",
    options: [
      ["--template", "the profile as YAML to fill in with your radio's figures"],
      [
        "--region <code>",
        "the rule of US, CA, EU, GB, AU, NZ, JP or world, and the profile by it",
        REGION_WORDS,
      ],
    ],
    offer: PROFILE_WORDS,
    examples: [
      "stillband profiles",
      "stillband profiles raster-13",
      "stillband profiles raster-13 --template -o my-radio.yaml",
      "stillband profiles my-radio.yaml --region EU",
    ],
  },
  {
    name: "completion",
    operands: "<shell>",
    summary: "what makes bash, zsh or fish complete these commands",
    options: [],
    offer: { words: SHELLS },
    examples: [
      "source <(stillband completion bash)",
      "stillband completion zsh > ~/.zfunc/_stillband",
      "stillband completion fish > ~/.config/fish/completions/stillband.fish",
    ],
  },
];

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
    for (const [flags, meaning] of [...definition.options, ...COMMON]) addOption(command, flags, meaning);
    command.option("--debug", "say where a bug happened");
    command.action(async () => {
      const options = command.opts<CommonOptions>();
      const words = argv.slice(argv.indexOf(definition.name) + 1);
      const files = venueArgument(definition.venue, command.args) ?? scanArguments(words, command);
      const context = { io, options, words: command.args, files };
      ended(await runToEnd(context, `stillband/${definition.name}@1`, runs[definition.name]!));
    });
  }
  return program;
}

declare const STILLBAND_VERSION: string;
/** Set when the command line is bundled. */
const VERSION = typeof STILLBAND_VERSION === "string" ? STILLBAND_VERSION : "0.0.0";

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
