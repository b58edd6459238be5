import type { StopSignal } from "../issues/index.js";
import { packExactly } from "./pack-exactly.js";
import { packFirstFit } from "./pack-first-fit.js";
import type { PackedPlace, Packing, PackKind } from "./pack-kind.js";
import { packKinds, totalBlocks } from "./pack-kind.js";
import { layOut } from "./pack-layout.js";
import { leastBinCount } from "./pack-lower-bound.js";
import type { Segment } from "./slot-segment.js";
import { freeSegments, mostBlocks } from "./slot-segment.js";
import { StepBudget } from "./step-budget.js";
import { UNIVERSE_SLOT_COUNT } from "./universe.js";

/** Items in the fewest universes found. */
export interface UniversePacking {
  readonly universeCount: number;
  /** It is proved that no packing needs fewer. */
  readonly lowerBoundCount: number;
  /** For each item. */
  readonly places: readonly PackedPlace[];
}

/** What is to be packed, and how long to try. */
export interface UniversePackTerms {
  /** For each item; each must fit into a run of some universe. */
  readonly slotCounts: readonly number[];
  readonly alignSlotCount: number;
  readonly mostStepCount: number;
  readonly signal?: StopSignal | undefined;
  /** @returns what each slot of a universe holds; from some number on, all are alike */
  readonly universeAt: (universeIndex: number) => Uint8Array;
}

/** Packs items into universes 0 … n − 1 with n as small as can be found. */
export function packUniverses(terms: UniversePackTerms): UniversePacking {
  const { slotCounts, alignSlotCount, mostStepCount, signal, universeAt } = terms;
  const kinds = packKinds(slotCounts, alignSlotCount);
  const total = totalBlocks(kinds);
  const bound = leastBinCount(kinds, Math.ceil(UNIVERSE_SLOT_COUNT / alignSlotCount));
  const budget = new StepBudget(mostStepCount, signal);
  const segments: Segment[] = [];
  let [roomCount, lowerBoundCount, refuted] = [0, 0, true];
  for (let universeCount = 0; ; universeCount++) {
    const answer = universeCount < bound || roomCount < total ? "none" : packed(kinds, segments, budget);
    if (refuted) lowerBoundCount = universeCount;
    if (answer !== "none" && answer !== "unknown")
      return { universeCount, lowerBoundCount, places: layOut(answer, kinds, segments, alignSlotCount) };
    refuted &&= answer === "none";
    const further = freeSegments(universeAt(universeCount), universeCount, alignSlotCount);
    segments.push(...further);
    roomCount += further.reduce((sum, segment) => sum + mostBlocks(segment), 0);
  }
}

function packed(
  kinds: readonly PackKind[],
  segments: readonly Segment[],
  budget: StepBudget,
): Packing | "none" | "unknown" {
  return packFirstFit(kinds, segments) ?? packExactly(kinds, segments, budget);
}
