import type { PatchConflict, PatchedLuminaire } from "../patch/index.js";
import type { PatchPlan } from "../venue/index.js";
import { nameOf, REASON_WORDS, toldConflicts } from "./patch-words.js";

/** Each clash and fault by name: what is wrong, who is in it, which slots. Errors first. */
export function conflictLines(patch: PatchPlan): string[] {
  const told = toldConflicts(patch);
  const bySeverity = ["error", "warning"].flatMap((severity) =>
    told.filter((conflict) => conflict.severity === severity),
  );
  return bySeverity.map(
    (conflict) => `${conflict.severity === "error" ? "ERROR" : "look"}: ${conflictWords(conflict, patch)}`,
  );
}

/** One clash or fault in a sentence. */
export function conflictWords(conflict: PatchConflict, patch: PatchPlan): string {
  const { kind, luminaires, universe, slots } = conflict;
  const first = luminaires[0]!;
  const name = nameOf(first.name);
  const range = slots === null ? "" : rangeWords(slots.firstSlot, slots.lastSlot);
  const where = `${range} of universe ${universe ?? "?"}`;
  switch (kind) {
    case "overlap":
      return `${where} taken twice: ${withSlots(luminaires)}.`;
    case "duplicate":
      return `${where} are the same for ${joined(luminaires)}: they move alike; right only if that is meant.`;
    case "reserved":
      return `${where} reserved, but taken by ${withSlots(luminaires)}.`;
    case "across-universes":
      return `${name} runs across the end of universe ${universe ?? "?"}: ${withSlots(luminaires)}, and 512 is the last.`;
    case "beyond-512":
      return `${name}: DMX addresses are 1 to 512, not ${first.slots?.firstSlot ?? "that"}.`;
    case "receiver-systems":
      return `receiver ${receiverOf(first, patch)} hears one system only, but serves ${joined(luminaires, ({ system }) => nameOf(system ?? "no system"))}.`;
    case "receiver-universes":
      return `receiver ${receiverOf(first, patch)} serves several universes (most give out one): ${joined(luminaires, (one) => `universe ${one.universe ?? "?"}`)}.`;
    case "duplicate-name":
      return `${luminaires.length} luminaires are called ${name}: labels would not tell them apart.`;
    default:
      return `${name}: ${ownFault(conflict, patch)}.`;
  }
}

/** What is wrong with one luminaire, taken alone. */
function ownFault(
  { kind, luminaires, universe }: PatchConflict,
  { addresses, modes, systems }: PatchPlan,
): string {
  const first = luminaires[0]!;
  const row = addresses.rows.find((one) => one.name === first.name);
  const mode = modes.find((one) => one.mode === row?.mode);
  const carried = systems.find((one) => one.name === first.system);
  switch (kind) {
    case "no-footprint":
      return "its footprint is not known: state its slots, or those of its mode";
    case "mode-footprint":
      return `its ${row?.footprintSlotCount ?? "?"} slots are not the ${mode?.footprintSlotCount ?? "?"} of mode ${nameOf(mode?.mode ?? "?")}`;
    case "no-system":
      return "no system serves it";
    case "no-such-universe":
      return universe === null ? "its universe is not known" : `universes are 1 to 63999, not ${universe}`;
    case "other-universe":
      return `universe ${universe ?? "?"} is not carried by ${nameOf(first.system ?? "its system")}${
        carried === undefined
          ? ""
          : `, which carries ${carriedWords(carried.universe, carried.universeCount)}`
      }`;
    default:
      return `no DMX address: ${REASON_WORDS[row?.reason ?? "no-footprint"][1]}`;
  }
}

/** @example carriedWords(3, 2); // => "universes 3 to 4" */
export function carriedWords(universe: number, universeCount: number): string {
  return universeCount === 1
    ? `universe ${universe}`
    : `universes ${universe} to ${universe + universeCount - 1}`;
}

/** @example rangeWords(7, 8); // => "slots 7 to 8" */
export function rangeWords(firstSlot: number, lastSlot: number): string {
  return firstSlot === lastSlot ? `slot ${firstSlot}` : `slots ${firstSlot} to ${lastSlot}`;
}

function joined(
  luminaires: readonly PatchedLuminaire[],
  what?: (luminaire: PatchedLuminaire) => string,
): string {
  return luminaires
    .map((one) => (what === undefined ? nameOf(one.name) : `${nameOf(one.name)} (${what(one)})`))
    .join(", ");
}

function withSlots(luminaires: readonly PatchedLuminaire[]): string {
  return joined(luminaires, ({ slots }) =>
    slots === null ? "no address" : rangeWords(slots.firstSlot, slots.lastSlot),
  );
}

function receiverOf({ name }: PatchedLuminaire, { addresses }: PatchPlan): string {
  return nameOf(addresses.rows.find((row) => row.name === name)?.receiver ?? name);
}
