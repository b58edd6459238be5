import { DMX_TIMING, dmxFrame, UNIVERSE_SLOT_COUNT } from "../patch/index.js";
import type { DmxFrame, UniverseUse } from "../patch/index.js";

/** How long a packet of a universe takes where the desk sends no more slots than are used. */
export interface UniverseRefresh {
  readonly universe: number;
  /** Up to the last one that a luminaire takes. */
  readonly sentSlotCount: number;
  readonly frame: DmxFrame;
}

/** How often DMX512 lines are refreshed. */
export interface PatchRefresh {
  /** All 512 slots, the shortest break and mark that may be sent: as most desks send. */
  readonly full: DmxFrame;
  /** The same with the usual break. */
  readonly fullUsualBreak: DmxFrame;
  readonly universes: readonly UniverseRefresh[];
  readonly timing: typeof DMX_TIMING;
}

/**
 * @returns the refresh of each universe, and of one that is sent whole
 * @see {@link planPatch}
 */
export function patchRefresh(universes: readonly UniverseUse[]): PatchRefresh {
  return {
    full: dmxFrame({ slotCount: UNIVERSE_SLOT_COUNT }),
    fullUsualBreak: dmxFrame({
      slotCount: UNIVERSE_SLOT_COUNT,
      breakUs: DMX_TIMING.typicalBreak.valueUs,
    }),
    universes: universes.map(({ universe, lastUsedSlot }) => ({
      universe,
      sentSlotCount: lastUsedSlot,
      frame: dmxFrame({ slotCount: lastUsedSlot }),
    })),
    timing: DMX_TIMING,
  };
}
