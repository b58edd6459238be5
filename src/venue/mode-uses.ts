import type { ModeFootprint } from "../patch/index.js";
import type { Luminaire } from "./venue-luminaire.js";

/** A DMX mode and who runs in it. */
export interface ModeUse {
  readonly mode: string;
  /** Slots that it takes; null: nobody says, or its luminaires disagree. */
  readonly footprintSlotCount: number | null;
  /** Was it given, or is it that of the luminaires that state theirs? */
  readonly given: boolean;
  /** The footprints that its luminaires state, each once, least first. */
  readonly statedSlotCounts: readonly number[];
  readonly luminaires: readonly string[];
  /** Luminaires that state no footprint: they take the mode's. */
  readonly filled: readonly string[];
}

/**
 * The modes of luminaires, in the order of the list, each with its footprint: the one given, else the one that
 * all of its luminaires that state a footprint agree on. Where they disagree nothing is guessed.
 * @param given footprints of modes that somebody looked up
 * @see {@link planPatch}
 */
export function modeUses(luminaires: readonly Luminaire[], given: readonly ModeFootprint[] = []): ModeUse[] {
  const names = new Set(luminaires.flatMap(({ mode }) => mode ?? []));
  return [...names].map((mode) => {
    const own = luminaires.filter((luminaire) => luminaire.mode === mode);
    const stated = own.flatMap(({ footprintSlotCount }) => footprintSlotCount ?? []);
    const statedSlotCounts = [...new Set(stated)].sort((a, b) => a - b);
    const lookedUp = given.find((one) => one.mode === mode);
    const agreed = statedSlotCounts.length === 1 ? statedSlotCounts[0]! : null;
    return {
      mode,
      footprintSlotCount: lookedUp?.footprintSlotCount ?? agreed,
      given: lookedUp !== undefined,
      statedSlotCounts,
      luminaires: own.map(({ name }) => name),
      filled: own.flatMap(({ name, footprintSlotCount }) => (footprintSlotCount === null ? name : [])),
    };
  });
}
