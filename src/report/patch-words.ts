import { printable } from "../issues/index.js";
import type { AddressRow, PatchConflict, SwitchSetting, UnpatchedReason } from "../patch/index.js";
import type { PatchPlan } from "../venue/index.js";

/** A name of the venue file, harmless and short enough for a line. */
export function nameOf(text: string): string {
  return printable(text, 40);
}

/** Names one after the other, as they fit a sentence. */
export function namesOf(names: readonly string[]): string {
  return names.map(nameOf).join(", ");
}

/** @example countOf(1, "luminaire"); // => "1 luminaire" */
export function countOf(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? "" : "s"}`;
}

/** The digit of each switch that is on, a dot for each that is off. @example switchPicture([true, false, true]); // => "1.3" */
export function switchPicture(setting: SwitchSetting): string {
  return setting.map((on, index) => (on ? String(index + 1) : ".")).join("");
}

/** Why a luminaire has no address: in a table, and in a sentence. */
export const REASON_WORDS: Readonly<Record<UnpatchedReason, readonly [short: string, words: string]>> = {
  overflow: ["overflow", "the universes that its system carries are full"],
  "universe-full": ["full", "the universe that it asks for is full"],
  "no-footprint": ["slots ?", "its footprint is not known"],
  "no-system": ["system ?", "no system serves it"],
  "no-such-universe": ["universe ?", "there is no such universe"],
  "no-run": ["no run", "reserved slots leave no universe a run as long as its footprint"],
};

/**
 * What stands against the patch and is told once: that a luminaire has no address goes without saying where the
 * reason is told by itself.
 */
export function toldConflicts({ addresses }: PatchPlan): PatchConflict[] {
  const reasonOf = new Map(addresses.rows.map(({ name, reason }) => [name, reason]));
  return addresses.conflicts.filter(({ kind, luminaires }) => {
    if (kind !== "unpatched") return true;
    const reason = reasonOf.get(luminaires[0]!.name);
    return reason === "universe-full" || reason === "no-run";
  });
}

/** A luminaire's place in words: `universe 1, DMX address 17`. */
export function placeOf({ universe, address }: Pick<AddressRow, "universe" | "address">): string {
  if (address === null) return "no DMX address";
  return `universe ${universe ?? "?"}, DMX address ${address}`;
}
