import type { AddressRow } from "./address-plan.js";
import type { AddressSwitches } from "./address-switches.js";
import { addressSwitches } from "./address-switches.js";
import { isAddress } from "./universe.js";

/** A radio channel as a label names it. */
export interface LabelChannel {
  readonly channel: number;
  readonly centreMhz: number;
}

/** The planned radio channel of a system and its fallback; null: a hop set, or none chosen. */
export interface SystemChannels {
  readonly system: string;
  readonly channel: LabelChannel | null;
  readonly fallback: LabelChannel | null;
}

/** What the label at a luminaire says. */
export interface PatchLabel {
  readonly name: string;
  readonly room: string;
  readonly system: string | null;
  readonly universe: number | null;
  readonly address: number | null;
  readonly lastSlot: number | null;
  readonly footprintSlotCount: number | null;
  readonly mode: string | null;
  /** Null: one of its own. */
  readonly receiver: string | null;
  readonly channel: LabelChannel | null;
  readonly fallback: LabelChannel | null;
  /** Null without an address. */
  readonly switches: AddressSwitches | null;
}

/**
 * A label for each luminaire: where it listens and how it is set, by DMX address and radio channel.
 * @param rows of the address plan
 * @param channels the systems' radio channels; a system that is not there has none chosen
 * @example
 * const luminaires = [{ name: "A1", room: "loft", footprintSlotCount: 8 }];
 * const { rows } = allocateAddresses({ luminaires, systems: [{ name: "loft", universe: 3 }] });
 * const channels = [{ system: "loft", channel: { channel: 6, centreMhz: 2437 }, fallback: null }];
 * patchLabels(rows, channels).map(({ universe, lastSlot, channel }) => [universe, lastSlot, channel.centreMhz]);
 * // => [[3, 8, 2437]]
 */
export function patchLabels(rows: readonly AddressRow[], channels: readonly SystemChannels[]): PatchLabel[] {
  const bySystem = new Map(channels.map((one) => [one.system, one]));
  return rows.map((row) => {
    const radio = bySystem.get(row.system ?? "");
    const { name, room, system, universe, address, lastSlot, footprintSlotCount, mode, receiver } = row;
    return {
      ...{ name, room, system, universe, address, lastSlot, footprintSlotCount, mode, receiver },
      channel: radio?.channel ?? null,
      fallback: radio?.fallback ?? null,
      switches: address !== null && isAddress(address) ? addressSwitches(address) : null,
    };
  });
}
