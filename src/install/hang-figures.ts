/** What a luminaire hangs by. */
export type Suspension = "chain" | "wire-rope" | "stem";

/** What it hangs from: the outlet box, or a support of the structure beside it. */
export type HangsFrom = "box" | "structure";

/** Lengths and weights of the hardware that a crew measures or reads from the maker's sheet; null: not known. */
export interface HangFigures {
  readonly suspension: Suspension;
  readonly hangsFrom: HangsFrom;
  /** Is the box listed for luminaires above 50 lb (23 kg)? */
  readonly boxListed: "yes" | "no" | "unknown";
  /** Inside length of a chain link, or the step that a stem comes in; null: cut to any length (not for chain). */
  readonly stepM: number | null;
  /** Height that canopy and its loop take below the ceiling point. */
  readonly canopyM: number;
  /** Height that the upper hook takes between loop and chain. */
  readonly topHookM: number;
  /** Height that the lower hook takes. */
  readonly bottomHookM: number;
  /** Height that the luminaire's eye bolt or loop takes. */
  readonly eyeBoltM: number;
  /** Eye bolt's seat to lowest edge. */
  readonly bodyHeightM: number | null;
  /** Cord that weaving takes beyond the chain's length, as a share of it. */
  readonly weaveRatio: number;
  /** Cord for the make-up within the box. */
  readonly boxMakeUpM: number;
  /** Cord from the eye bolt to the luminaire's inlet. */
  readonly inletReachM: number;
  /** Sideways from the hanging point to the safety cable's own anchor. */
  readonly safetyOffsetM: number;
  /** Safety cable beyond the straight way, terminations and slack. */
  readonly safetySlackM: number;
  /** Of the ceiling at the point; null: not known. */
  readonly slopeDeg: number | null;
  /** Weight of the chain, rope or stem, a metre. */
  readonly suspensionKgPerM: number | null;
  readonly cordKgPerM: number | null;
  /** Hooks, canopy and what else hangs along. */
  readonly hardwareKg: number | null;
  /** Of the receiver, where one hangs at the luminaire. */
  readonly receiverKg: number | null;
  /** Load that the maker states for the chain, rope or stem. */
  readonly suspensionRatedKg: number | null;
  readonly hookRatedKg: number | null;
  /** Load stated for the box, or for the structure's support where it hangs from that. */
  readonly boxRatedKg: number | null;
  readonly safetyRatedKg: number | null;
}

/**
 * Figures that hold where none is given: common practice, no source; reports say which of them were assumed.
 * Nothing is assumed of weights, ratings, slopes and the luminaire's height.
 */
export const HANG_DEFAULTS: HangFigures = {
  suspension: "chain",
  hangsFrom: "box",
  boxListed: "unknown",
  stepM: null,
  canopyM: 0,
  topHookM: 0,
  bottomHookM: 0,
  eyeBoltM: 0,
  bodyHeightM: null,
  weaveRatio: 0.1,
  boxMakeUpM: 0.3,
  inletReachM: 0.3,
  safetyOffsetM: 0,
  safetySlackM: 0.3,
  slopeDeg: null,
  suspensionKgPerM: null,
  cordKgPerM: null,
  hardwareKg: null,
  receiverKg: null,
  suspensionRatedKg: null,
  hookRatedKg: null,
  boxRatedKg: null,
  safetyRatedKg: null,
};
