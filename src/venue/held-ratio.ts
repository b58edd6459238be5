import { fadeOutageRatio } from "../propagation/index.js";
import type { FadeLaw } from "../propagation/index.js";

/**
 * The share of positions whose fading the lesser margin covers.
 * @param margins before the fade allowance, dB; −Infinity where no signal arrives
 * @example heldRatio({ law: "lognormal", sigmaDb: 8 }, { sensitivityMarginDb: 20, interferenceMarginDb: 0 }); // => 0.5
 */
export function heldRatio(
  law: FadeLaw,
  margins: { readonly sensitivityMarginDb: number; readonly interferenceMarginDb: number },
): number {
  const marginDb = Math.min(margins.sensitivityMarginDb, margins.interferenceMarginDb);
  return marginDb === -Infinity ? 0 : 1 - fadeOutageRatio({ ...law, marginDb });
}
