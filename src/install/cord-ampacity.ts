import type { CordConductor, WireOrigin } from "./cord-conductors.js";

/** The current that a cord may carry, and where that figure comes from. */
export interface CordAmpacity {
  readonly ampacityA: number;
  readonly origin: WireOrigin;
}

/**
 * The current that a cord may carry. Where the table has none for two loaded conductors, the smaller figure for
 * three stands in.
 * @param loadedCount conductors that carry current: 2 (line and neutral) or 3; earth counts for nothing
 * @validity 30 °C around it, not bundled, not covered
 * @example cordAmpacity(AWG_CORDS[2], 2).ampacityA; // => 18
 */
export function cordAmpacity(conductor: CordConductor, loadedCount: 2 | 3): CordAmpacity {
  const { twoLoadedA, twoLoadedOrigin, threeLoadedA, threeLoadedOrigin } = conductor;
  if (loadedCount === 3 || twoLoadedA === null) return { ampacityA: threeLoadedA, origin: threeLoadedOrigin };
  return { ampacityA: twoLoadedA, origin: twoLoadedOrigin };
}
