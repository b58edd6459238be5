import { requireWhole } from "../issues/index.js";
import { UNIVERSE_SLOT_COUNT } from "./universe.js";

/** What each of the nine switches adds to the address when it is on, first to last. */
export const SWITCH_VALUES = [1, 2, 4, 8, 16, 32, 64, 128, 256] as const;

/** Nine on/off switches, first to last; true: on. */
export type SwitchSetting = readonly boolean[];

/** How nine on/off switches are set for a start address. */
export interface AddressSwitches {
  readonly address: number;
  /** Luminaires that count from one: value = address. Null for 512, which nine switches can't say. */
  readonly fromOne: SwitchSetting | null;
  /** Luminaires that count from zero: value = address − 1. */
  readonly fromZero: SwitchSetting;
}

/**
 * Settings of the nine on/off switches by which many luminaires are addressed: the values 1, 2, 4 … 256 of those
 * that are on add up to the address. Some count from zero: theirs add up to one less. A tenth switch, where there
 * is one, has another task.
 * @param address DMX start address, 1 … 512
 * @throws {ArgumentError} when it is none
 * @source common practice, no source; the sum itself is the address in binary
 * @validity what a luminaire does with all switches off (address 512, address 1 or a test) is its maker's choice
 * @example addressSwitches(5).fromOne; // => [true, false, true, false, false, false, false, false, false]
 */
export function addressSwitches(address: number): AddressSwitches {
  requireWhole("address", address, 1, UNIVERSE_SLOT_COUNT);
  const fromOne = address < UNIVERSE_SLOT_COUNT ? settingOf(address) : null;
  return { address, fromOne, fromZero: settingOf(address - 1) };
}

function settingOf(sum: number): SwitchSetting {
  return SWITCH_VALUES.map((value) => Math.floor(sum / value) % 2 === 1);
}
