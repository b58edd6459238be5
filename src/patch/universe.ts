/**
 * Slots of a universe after the start code: DMX addresses 1 … 512.
 * @source ANSI E1.11
 */
export const UNIVERSE_SLOT_COUNT = 512;

/**
 * The last universe number that may carry lighting levels; the first is 1.
 * @source ANSI E1.31-2018
 */
export const LAST_UNIVERSE = 63_999;

/**
 * @param universe what may be one
 * @returns is this the number of a universe, whole and 1 … 63999?
 * @example isUniverse(64_000); // => false
 */
export function isUniverse(universe: number): boolean {
  return Number.isInteger(universe) && universe >= 1 && universe <= LAST_UNIVERSE;
}

/**
 * @param address what may be one
 * @returns is this a DMX address, or a footprint: whole and 1 … 512?
 * @example isAddress(512); // => true
 */
export function isAddress(address: number): boolean {
  return Number.isInteger(address) && address >= 1 && address <= UNIVERSE_SLOT_COUNT;
}
