import { HANG_OPTIONS } from "./hang-options.js";
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
import { PATCH_OPTIONS } from "./patch-options.js";
import { VERIFY_OPTIONS } from "./verify-option-table.js";

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
  /** The option that names a scan beside a venue file. */
  readonly scanFlag?: string;
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
    name: "verify",
    operands: "<venue>",
    summary: "after install: readings and fresh scans against the plan",
    options: VERIFY_OPTIONS,
    venue: "always",
    scanFlag: "--scan",
    examples: [
      "stillband verify venue.yaml --readings readings.csv",
      "stillband verify venue.yaml --place hall --crowd empty --scan after.txt",
      "stillband verify venue.yaml --since job-12/plan.json --scan scans/",
    ],
  },
  {
    name: "plan",
    operands: "<venue>",
    summary: "the whole job: a folder with the report page, the plan file and the crew's tables",
    options: [
      [
        "-o, --output <folder>",
        "the folder to write, whole or not at all (default the venue file's name-plan)",
        FILES,
      ],
      ["--force", "replace a folder that an earlier plan wrote"],
      ["--date <iso>", "on every sheet (default none: the same input gives the same bytes)"],
      ["--revision <words>", "on every sheet"],
      ["--show-names", "other people's network names on every sheet (they are personal data)"],
      ["--svg <folder>", "the pictures, each in a file of its own, too", FILES],
      ["--check", "exit 1 where the plan can't work"],
      ...VENUE,
    ],
    venue: "always",
    examples: [
      "stillband plan venue.yaml",
      "stillband plan venue.yaml -o job-12 --date 2026-03-07 --revision B",
      "stillband plan venue.yaml -o job-12 --force --svg job-12-pictures",
      "stillband plan venue.yaml --json",
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

/** A command's own options, then those that every command takes and it doesn't give a meaning of its own. */
export function optionsOf({ options }: Pick<Definition, "options">): Option[] {
  const nameOf = ([flags]: Option): string => /--[a-z-]+/.exec(flags)![0];
  const own = new Set(options.map(nameOf));
  return [...options, ...COMMON.filter((option) => !own.has(nameOf(option)))];
}
