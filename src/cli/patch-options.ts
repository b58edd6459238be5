import { printable } from "../issues/index.js";
import { LAST_UNIVERSE, UNIVERSE_SLOT_COUNT } from "../patch/index.js";
import type { ModeFootprint, ReservedSlots } from "../patch/index.js";
import { nearestWord } from "../radio/index.js";
import type { PlanPatchOptions, Venue } from "../venue/index.js";
import type { CommonOptions } from "./context.js";
import { CliError, EXIT } from "./exit.js";
import type { Option } from "./option-groups.js";
import { badOption, numberWord } from "./words.js";

/** The options of `patch`. */
export interface PatchOptions extends CommonOptions {
  readonly order?: string;
  readonly align?: string;
  readonly spare?: string;
  readonly reserve?: readonly string[];
  readonly mode?: readonly string[];
  readonly room?: string;
  readonly system?: string;
  readonly labels?: boolean;
  readonly csv?: boolean;
  readonly check?: boolean;
}

/** As they are told in help. */
export const PATCH_OPTIONS: readonly Option[] = [
  [
    "--order <word>",
    "hanging, or fewest: the fewest universes (default hanging)",
    { words: ["hanging", "fewest"] },
  ],
  ["--align <slots>", "start addresses are 1, 1 + this, 1 + 2 x this (default 1)"],
  ["--spare <slots>", "kept free behind each group (default 0)"],
  ["--reserve <system:universe:from-to...>", "slots that nothing is patched to"],
  ["--mode <name=slots...>", "footprint of a mode, for luminaires that state none"],
  ["--room <name>", "show this room alone; addresses are the whole venue's"],
  ["--system <name>", "show this system alone; addresses are the whole venue's"],
  ["--labels", "labels to cut out, instead of the sheet"],
  ["--csv", "a table for a spreadsheet, labels included (as -o FILE.csv)"],
  ["--check", "exit 1 where a luminaire clashes or has no address"],
];

/** @throws {CliError} exit 64 for a value that can't be, or a name that the venue doesn't have */
export function patchSetting(options: PatchOptions, venue: Venue): PlanPatchOptions {
  const { order = "hanging", align, spare, reserve = [], mode = [] } = options;
  if (order !== "hanging" && order !== "fewest")
    throw badOption("--order", "hanging or fewest", order, "fewest");
  return {
    order,
    ...(align !== undefined && { alignSlotCount: slotsWord("--align", align, 1) }),
    ...(spare !== undefined && { spareSlotCount: slotsWord("--spare", spare, 0) }),
    reserved: reserve.map((text) => reserveWord(text, venue)),
    modes: modesOf(mode, venue),
  };
}

/**
 * One of the names that the venue has.
 * @throws {CliError} exit 64 with the names that there are and the nearest
 */
export function knownName(flag: string, kind: string, name: string, names: readonly string[]): string {
  if (names.includes(name)) return name;
  if (names.length === 0)
    throw new CliError(EXIT.usage, `${flag}: the venue file names no ${kind}`, `leave ${flag} out`);
  const shown = names.map((known) => printable(known, 40));
  const some = shown.length > MOST_NAMED ? [...shown.slice(0, MOST_NAMED), "…"] : shown;
  const nearest = printable(nearestWord(name, names) ?? names[0] ?? "", 40);
  throw badOption(flag, `a ${kind} of the venue file (${some.join(", ")})`, name, `"${nearest}"`);
}

const MOST_NAMED = 20;

function slotsWord(flag: string, text: string, lowest: number): number {
  const expected = `a whole number of slots, ${lowest} to ${UNIVERSE_SLOT_COUNT}`;
  const count = numberWord(flag, text, { lowest, highest: UNIVERSE_SLOT_COUNT, expected, example: "16" });
  if (!Number.isInteger(count)) throw badOption(flag, expected, text, "16");
  return count;
}

const RESERVE = /^(?:(.+):)?(\d+):(\d+)(?:-(\d+))?$/s;
const RESERVE_FORM = "SYSTEM:UNIVERSE:FROM-TO, slots 1 to 512";

/** Slots of a universe; the system before it is a check, a universe has the same slots whoever carries it. */
function reserveWord(text: string, { systems }: Venue): ReservedSlots {
  const [found, system, universeText, fromText, toText = fromText] = RESERVE.exec(text) ?? [];
  const [universe, firstSlot, lastSlot] = [Number(universeText), Number(fromText), Number(toText)];
  const example = `"${printable(systems[0]?.name ?? "hall", 40)}:${systems[0]?.universe ?? 1}:500-512"`;
  const fits =
    found !== undefined &&
    universe >= 1 &&
    universe <= LAST_UNIVERSE &&
    firstSlot >= 1 &&
    lastSlot >= firstSlot &&
    lastSlot <= UNIVERSE_SLOT_COUNT;
  if (!fits) throw badOption("--reserve", RESERVE_FORM, text, example);
  if (system !== undefined) {
    const names = systems.map(({ name }) => name);
    const carrier = systems.find(({ name }) => name === knownName("--reserve", "system", system, names))!;
    const last = carrier.universe + carrier.profile.universesPerTransmitterCount.value - 1;
    if (universe < carrier.universe || universe > last)
      throw badOption(
        "--reserve",
        `a universe that ${printable(system, 40)} carries, ${carrier.universe}${last === carrier.universe ? "" : ` to ${last}`}`,
        text,
        `"${printable(system, 40)}:${carrier.universe}:500-512"`,
      );
  }
  return { universe, firstSlot, lastSlot };
}

function modesOf(texts: readonly string[], { luminaires }: Venue): ModeFootprint[] {
  const names = [...new Set(luminaires.flatMap(({ mode }) => mode ?? []))];
  const modes = texts.map((text) => modeWord(text, names));
  const twice = modes.find(({ mode }, index) => modes.findIndex((one) => one.mode === mode) < index);
  if (twice !== undefined)
    throw new CliError(
      EXIT.usage,
      `--mode: expected each mode once, got "${printable(twice.mode, 60)}" twice`,
      `--mode "${printable(twice.mode, 60)}=${twice.footprintSlotCount}"`,
    );
  return modes;
}

function modeWord(text: string, names: readonly string[]): ModeFootprint {
  const cut = text.lastIndexOf("=");
  const slots = text.slice(cut + 1).trim();
  const footprintSlotCount = /^\d{1,3}$/.test(slots) ? Number(slots) : 0;
  const example = `"${printable(names[0] ?? "8 bit", 40)}=8"`;
  if (cut < 1 || footprintSlotCount < 1 || footprintSlotCount > UNIVERSE_SLOT_COUNT)
    throw badOption("--mode", "NAME=SLOTS, slots 1 to 512", text, example);
  return { mode: knownName("--mode", "mode", text.slice(0, cut).trim(), names), footprintSlotCount };
}
