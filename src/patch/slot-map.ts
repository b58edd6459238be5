import type { ReservedSlots } from "./patch-luminaire.js";
import { UNIVERSE_SLOT_COUNT } from "./universe.js";

/** What a slot holds. */
export const SLOT = { free: 0, spare: 1, reserved: 2, used: 3 } as const;

/** Who has which slot, universe by universe. */
export class SlotMap {
  private readonly byUniverse = new Map<number, Uint8Array>();
  constructor(private readonly reserved: readonly ReservedSlots[]) {}

  /** @returns what each slot of a universe holds; `[slot]`, 1 … 512 */
  of(universe: number): Uint8Array {
    const known = this.byUniverse.get(universe);
    if (known !== undefined) return known;
    const slots = this.reservedOnly(universe);
    this.byUniverse.set(universe, slots);
    return slots;
  }

  /** @returns a universe as it is before anything is patched to it; null: one that has no number yet */
  reservedOnly(universe: number | null): Uint8Array {
    const slots = new Uint8Array(UNIVERSE_SLOT_COUNT + 1);
    for (const range of this.reserved)
      if (range.universe === null || range.universe === universe)
        slots.fill(SLOT.reserved, range.firstSlot, range.lastSlot + 1);
    return slots;
  }

  /** @returns the universes that have been asked for, lowest first */
  universes(): number[] {
    return [...this.byUniverse.keys()].sort((a, b) => a - b);
  }
}

/**
 * The first free run of slots in a universe.
 * @param slots what each slot holds; `[slot]`, 1 … 512
 * @param fromSlot where to look from
 * @param slotCount how long the run must be
 * @param alignSlotCount it starts at 1, 1 + this, 1 + 2 · this …
 * @returns its first slot; null where there is none
 */
export function firstFreeSlot(
  slots: Uint8Array,
  fromSlot: number,
  slotCount: number,
  alignSlotCount: number,
): number | null {
  let start = alignedSlot(fromSlot, alignSlotCount);
  while (start + slotCount - 1 <= UNIVERSE_SLOT_COUNT) {
    const taken = lastTaken(slots, start, slotCount);
    if (taken === null) return start;
    start = alignedSlot(taken + 1, alignSlotCount);
  }
  return null;
}

/** @returns the first slot at or after one at which a luminaire may start */
export function alignedSlot(fromSlot: number, alignSlotCount: number): number {
  return 1 + Math.ceil((fromSlot - 1) / alignSlotCount) * alignSlotCount;
}

function lastTaken(slots: Uint8Array, start: number, slotCount: number): number | null {
  for (let slot = start + slotCount - 1; slot >= start; slot--) if (slots[slot] !== SLOT.free) return slot;
  return null;
}
