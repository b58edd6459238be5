import type { Figure } from "./profile.js";

/** A region with a rule, or `world`: the careful choice where none of the others applies. */
export type RegionCode = "US" | "CA" | "EU" | "GB" | "AU" | "NZ" | "JP" | "world";

/** What one rule grants to one kind of modulation; a limit that is null isn't stated. */
export interface PowerRule {
  readonly modulation: "fixed" | "hopping";
  /** Hop frequencies that must be in use for this row; null for a fixed channel. */
  readonly leastHopCount: Figure | null;
  readonly maxEirpDbm: Figure | null;
  /** At the antenna connector. */
  readonly maxConductedDbm: Figure | null;
  /** Antenna gain up to which the conducted limit stands; above it, 1 dB less per dB. Null: no such rule. */
  readonly freeAntennaGainDbi: Figure | null;
  readonly density: DensityLimit | null;
}

/** A limit of power density. */
export interface DensityLimit {
  readonly limitDbmPerMhz: Figure;
  /** Bandwidth in which it is measured, MHz: a narrower signal counts whole. */
  readonly measuredOverMhz: number;
  /** Radiated, or at the antenna connector. */
  readonly at: "eirp" | "conducted";
}

/** The radio rule of a region for wireless DMX at 2.4 GHz. */
export interface RegionRule {
  readonly region: RegionCode;
  readonly title: string;
  /** Band edges that centre ± half the bandwidth must stay within. */
  readonly lowMhz: number;
  readonly highMhz: number;
  readonly bandSource: string;
  /** Hopping rows: the most hop frequencies first. */
  readonly rules: readonly PowerRule[];
  /** What the figures don't say; empty where nothing. */
  readonly remark: string;
}

/** Printed wherever a rule was applied. */
export const LOCAL_RULES_DECIDE =
  "A planning figure, no legal advice: the local rule and the radio's own approval decide.";
