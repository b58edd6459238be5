import { overlapDbByOffset } from "../../band/index.js";
import type { Shape } from "../../band/index.js";
import { dbToRatio } from "../../units/index.js";
import type { VenueSystem } from "../venue-system.js";

/** Share of one system's power that another's receivers take in, by how far its centre lies above the other's, MHz. */
export type SystemOverlap = (receiving: VenueSystem, other: VenueSystem, offsetMhz: number) => number;

/** @returns the share by the emission of the one and the selectivity of the other, each looked at once */
export function systemOverlap(): SystemOverlap {
  const pairs = new Map<Shape, Map<Shape, Map<number, number>>>();
  return (receiving, other, offsetMhz) => {
    const emission = other.profile.emission.value;
    const selectivity = receiving.profile.selectivity.value;
    const byReceiver = pairs.get(emission) ?? new Map<Shape, Map<number, number>>();
    pairs.set(emission, byReceiver);
    const byOffset = byReceiver.get(selectivity) ?? new Map<number, number>();
    byReceiver.set(selectivity, byOffset);
    const known = byOffset.get(offsetMhz);
    if (known !== undefined) return known;
    const ratio = dbToRatio(overlapDbByOffset(emission, selectivity)(offsetMhz));
    byOffset.set(offsetMhz, ratio);
    return ratio;
  };
}

/** @returns the share of a hopping system's power, spread over its hop frequencies, in a receiver tuned to one */
export function hopShareRatio(
  overlap: SystemOverlap,
  receiving: VenueSystem,
  hopping: { readonly system: VenueSystem; readonly channels: readonly { readonly centreMhz: number }[] },
  centreMhz: number,
): number {
  const { system, channels } = hopping;
  const total = channels.reduce((sum, hop) => sum + overlap(receiving, system, centreMhz - hop.centreMhz), 0);
  return total / channels.length;
}
