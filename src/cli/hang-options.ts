import { printable } from "../issues/index.js";
import { CREW_COLUMNS, crewCell, crewFigures } from "../install/index.js";
import type { Circuit, CrewKind, HangFigures } from "../install/index.js";
import { nearestWord } from "../radio/index.js";
import type { CrewSheet, LengthUnit } from "../report/index.js";
import type { ChosenChannels, PlanHangOptions, Venue } from "../venue/index.js";
import type { CommonOptions } from "./context.js";
import type { Option } from "./option-groups.js";
import { knownName } from "./patch-options.js";
import { badOption, plainNumber } from "./words.js";

/** The options of `hang`. */
export interface HangOptionWords extends CommonOptions {
  readonly sheet?: string;
  readonly room?: string;
  readonly system?: string;
  readonly set?: readonly string[];
  readonly pitch?: string;
  readonly belowTrim?: boolean;
  readonly unlevelled?: boolean;
  readonly tolerance?: string;
  readonly laserLine?: string;
  readonly weaveShare?: string;
  readonly wasteShare?: string;
  readonly spareShare?: string;
  readonly spool?: string;
  readonly chainSpool?: string;
  readonly safetySpool?: string;
  readonly continuousFactor?: string;
  readonly powerFactor?: string;
  readonly dropShare?: string;
  readonly sizes?: string;
  readonly loaded?: string;
  readonly channel?: readonly string[];
  readonly fallback?: readonly string[];
  readonly csv?: boolean;
  readonly check?: boolean;
}

const SHEETS: readonly CrewSheet[] = ["hang", "circuits", "order", "checks", "trouble"];

/** As they are told in help. */
export const HANG_OPTIONS: readonly Option[] = [
  ["--sheet <word>", "hang, circuits, order, checks or trouble (default all)", { words: [...SHEETS, "all"] }],
  ["--room <name>", "show this room alone"],
  ["--system <name>", "show this system alone"],
  ["--pitch <length>", "inside length of a chain link, as 35mm or 1 1/4in"],
  ["--set <figure=value...>", "a figure of all luminaires or circuits that say nothing, as breaker=16"],
  ["--below-trim", "a luminaire may hang below trim where that is nearer"],
  ["--unlevelled", "don't bring rows to one level"],
  ["--tolerance <length>", "what the eye forgives within a row (default 20mm)"],
  ["--laser-line <length>", "the datum's height, for rooms that state none"],
  ["--weave-share <share>", "cord for weaving, of the suspension (default 0.1)"],
  ["--waste-share <share>", "on top of what is cut (default 0.1)"],
  ["--spare-share <share>", "on top of what comes by the piece (default 0.1)"],
  ["--spool <length>", "cord on a spool; --chain-spool and --safety-spool the same"],
  ["--chain-spool <length>", "chain or rope on a spool"],
  ["--safety-spool <length>", "safety cable on a spool"],
  ["--continuous-factor <ratio>", "load that is on for hours counts so much (1.25 in US, CA)"],
  ["--power-factor <ratio>", "of drivers that state none (default 0.9)"],
  ["--drop-share <share>", "voltage that may be lost (default 0.03)"],
  ["--sizes <word>", "awg or mm2 (default by region and unit)", { words: ["awg", "mm2"] }],
  ["--loaded <count>", "2 or 3 conductors of the cord that carry current (default 2)", { words: ["2", "3"] }],
  ["--channel <system=number...>", "the radio channel that was chosen for a system"],
  ["--fallback <system=number...>", "the fallback that was chosen for a system"],
  ["--csv", "one sheet as a table (as -o FILE.csv); checks: a readings file"],
  ["--check", "exit 1 where a luminaire may not hang or a circuit is beyond"],
];

/** The sheets asked for. @throws {CliError} exit 64 for a word that is none */
export function sheetsAsked(word: string | undefined): readonly CrewSheet[] {
  if (word === undefined || word === "all") return SHEETS;
  const sheet = SHEETS.find((one) => one === word);
  if (sheet === undefined) {
    const near = nearestWord(word, SHEETS) ?? "hang";
    throw badOption("--sheet", `${SHEETS.join(", ")} or all`, word, near);
  }
  return [sheet];
}

/** @throws {CliError} exit 64 for a value that can't be, or a name that the venue doesn't have */
export function hangSetting(options: HangOptionWords, venue: Venue, units: LengthUnit): PlanHangOptions {
  const { sizes, loaded } = options;
  if (sizes !== undefined && sizes !== "awg" && sizes !== "mm2")
    throw badOption("--sizes", "awg or mm2", sizes, "awg");
  if (loaded !== undefined && loaded !== "2" && loaded !== "3")
    throw badOption("--loaded", "2 or 3", loaded, "2");
  const given = figuresGiven(options, units);
  const length = (flag: string, text: string | undefined, isPositive = true): number | undefined =>
    text === undefined ? undefined : lengthM(flag, text, units, isPositive);
  const spool = (name: "spool" | "chainSpool" | "safetySpool", flag: string): number | undefined =>
    length(flag, options[name]);
  return defined({
    ...given,
    ...{ mayHangBelowTrim: options.belowTrim, levelsRows: options.unlevelled === true ? false : undefined },
    eyeToleranceM: length("--tolerance", options.tolerance, false),
    laserLineM: length("--laser-line", options.laserLine, false),
    wasteRatio: share("--waste-share", options.wasteShare, [0, 10]),
    spareRatio: share("--spare-share", options.spareShare, [0, 10]),
    cordSpoolM: spool("spool", "--spool"),
    chainSpoolM: spool("chainSpool", "--chain-spool"),
    safetySpoolM: spool("safetySpool", "--safety-spool"),
    continuousFactorRatio: share("--continuous-factor", options.continuousFactor, [1, 10]),
    powerFactorRatio: share("--power-factor", options.powerFactor, [0.05, 1]),
    mostDropRatio: share("--drop-share", options.dropShare, [0, 1]),
    ...{ sizes, loadedCount: loaded === undefined ? undefined : (Number(loaded) as 2 | 3) },
    channels: channelsChosen(options, venue),
  });
}

function defined(options: {
  readonly [Key in keyof PlanHangOptions]: PlanHangOptions[Key] | undefined;
}): PlanHangOptions {
  return Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined));
}

function figuresGiven(
  { set = [], pitch, weaveShare }: HangOptionWords,
  units: LengthUnit,
): { readonly figures: Partial<HangFigures>; readonly circuit: Partial<Circuit> } {
  const cells = Object.fromEntries(set.map((word) => figureCell(word)));
  const { hang, circuit, faults } = crewFigures(cells, units);
  const [fault] = faults;
  if (fault !== undefined)
    throw badOption("--set", `${fault.column} to be ${fault.expected}`, fault.value, `${fault.column}=…`);
  return {
    figures: {
      ...hang,
      ...(pitch !== undefined && { stepM: lengthM("--pitch", pitch, units, true) }),
      ...(weaveShare !== undefined && { weaveRatio: share("--weave-share", weaveShare, [0, 10])! }),
    },
    circuit,
  };
}

/** Of all luminaires, or all circuits, and not of one alone. */
const SETTABLE = Object.entries(CREW_COLUMNS).flatMap(([name, { of }]) => (of === "point" ? [] : name));

function figureCell(word: string): [name: string, cell: string] {
  const [, name = "", cell = ""] = /^([A-Za-z][A-Za-z_]*)=(.+)$/s.exec(word) ?? [];
  if (SETTABLE.includes(name)) return [name, cell];
  const near = nearestWord(name, SETTABLE) ?? "body_height";
  throw badOption(
    "--set",
    `FIGURE=VALUE, a figure such as ${near}`,
    word,
    `"${near}=${cell === "" ? "450mm" : printable(cell, 40)}"`,
  );
}

function lengthM(flag: string, text: string, units: LengthUnit, isPositive: boolean): number {
  const kind: CrewKind = "length";
  const value = crewCell(text, kind, units, null);
  if (value === null || value > MOST_M || (isPositive && value === 0))
    throw badOption(flag, "a length such as 35mm or 1 1/4in", text, flag === "--pitch" ? "35mm" : "50m");
  return value;
}

const MOST_M = 100_000;

function share(
  flag: string,
  text: string | undefined,
  [low, high]: readonly [number, number],
): number | undefined {
  if (text === undefined) return undefined;
  const percent = /^(.*)%$/s.exec(text.trim());
  const value = percent === null ? plainNumber(text) : plainNumber(percent[1]!) / 100;
  if (!(value >= low && value <= high))
    throw badOption(flag, `a number from ${low} to ${high}`, text, String(Math.max(low, 0.1)));
  return value;
}

function channelsChosen({ channel = [], fallback = [] }: HangOptionWords, venue: Venue): ChosenChannels[] {
  const chosen = new Map<string, { system: string; channel?: number; fallbackChannel?: number }>();
  for (const [flag, key, words] of [
    ["--channel", "channel", channel],
    ["--fallback", "fallbackChannel", fallback],
  ] as const)
    for (const word of words) {
      const { system, number } = channelWord(flag, word, venue);
      chosen.set(system, { ...(chosen.get(system) ?? { system }), [key]: number });
    }
  return [...chosen.values()];
}

function channelWord(flag: string, word: string, { systems }: Venue): { system: string; number: number } {
  const names = systems.map(({ name }) => name);
  const example = `"${printable(names[0] ?? "hall", 40)}=6"`;
  const [, text = "", digits = ""] = /^(.+)=(\d{1,4})$/s.exec(word) ?? [];
  if (text === "") throw badOption(flag, "SYSTEM=NUMBER", word, example);
  const system = knownName(flag, "system", text, names);
  const { profile } = systems.find(({ name }) => name === system)!;
  const number = Number(digits);
  const numbers = profile.hopping === null ? profile.channels.map((one) => one.channel) : [];
  if (!numbers.includes(number))
    throw badOption(
      flag,
      numbers.length === 0
        ? `a system with radio channels; ${printable(system, 40)} hops`
        : `a radio channel of ${printable(system, 40)}, ${numbers[0]} to ${numbers.at(-1)}`,
      word,
      example,
    );
  return { system, number };
}
