import type { Enclosure, Figure } from "./profile.js";

const ASSUMED = "assumed; measure it: level at the receiver with the canopy open and closed";

/**
 * Loss between the air and the receiver's antenna by what it sits in, dB. For `closed-metal` the advice is
 * to bring the antenna out.
 * @source assumed, all four
 * @example enclosureLosses["slotted-metal"].value; // => 10
 */
export const enclosureLosses: Readonly<Record<Enclosure, Figure>> = {
  "antenna-outside": { value: 0, status: "assumed", source: ASSUMED },
  "plastic-or-glass": { value: 3, status: "assumed", source: ASSUMED },
  "slotted-metal": { value: 10, status: "assumed", source: ASSUMED },
  "closed-metal": { value: 20, status: "assumed", source: `${ASSUMED}; bring the antenna out` },
};
