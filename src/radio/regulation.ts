import type { Figure } from "./profile.js";

/** A region with a rule, or `world`: the careful choice where none of the others applies. */
export type RegionCode = "US" | "CA" | "EU" | "GB" | "AU" | "NZ" | "JP" | "world";

/**
 * How a rule's statement came here: read in the source named, read in a text that restates it, computed
 * from what was read, recalled without reading it, or assumed because no rule was read.
 */
export type RuleReading = "read" | "read, second-hand" | "computed" | "from memory" | "assumed";

/** A figure of a published rule, with how it was read. */
export interface RuleFigure extends Figure {
  readonly reading: RuleReading;
}

/** A statement of a rule that is no single figure. */
export interface RuleNote {
  readonly words: string;
  readonly source: string;
  readonly reading: RuleReading;
}

/** What one rule grants to one kind of modulation; a limit that is null isn't stated. */
export interface PowerRule {
  readonly modulation: "fixed" | "hopping";
  /** Hop frequencies that must be in use for this row; null for a fixed channel. */
  readonly leastHopCount: RuleFigure | null;
  readonly maxEirpDbm: RuleFigure | null;
  /** At the antenna connector. */
  readonly maxConductedDbm: RuleFigure | null;
  /** Antenna gain up to which the conducted limit stands; above it, 1 dB less per dB. Null: no such rule. */
  readonly freeAntennaGainDbi: RuleFigure | null;
  readonly density: DensityLimit | null;
  /** Time on one frequency, the strictest first; empty for a fixed channel, or where none was read. */
  readonly dwells: readonly DwellLimit[];
}

/** A limit of power density. */
export interface DensityLimit {
  readonly limitDbmPerMhz: RuleFigure;
  /** Bandwidth in which it is measured, MHz: a narrower signal counts whole. */
  readonly measuredOverMhz: number;
  /** Radiated, or at the antenna connector. */
  readonly at: "eirp" | "conducted";
}

/** A limit of the time on one hop frequency, summed within that time × the number of frequencies in use. */
export interface DwellLimit {
  readonly appliesTo: "any" | "adaptive" | "non-adaptive";
  readonly mostDwellS: RuleFigure;
}

/** What a rule asks of a radio that doesn't listen before it talks. */
export interface AdaptivityRule {
  /** What else the rule asks, or that none was read. */
  readonly note: RuleNote;
  /** Asked from this EIRP up; null where nothing is asked or it is not known. */
  readonly fromEirpDbm: RuleFigure | null;
  /** Most medium utilisation (EIRP / 100 mW × airtime) without adaptivity, 0..1; null where not stated. */
  readonly mostMediumUseRatio: RuleFigure | null;
}

/** The radio rule of a region for wireless DMX at 2.4 GHz. */
export interface RegionRule {
  readonly region: RegionCode;
  readonly title: string;
  /** Band edges that centre ± half the bandwidth must stay within. */
  readonly lowMhz: number;
  readonly highMhz: number;
  readonly bandSource: string;
  readonly bandReading: RuleReading;
  /** Hopping rows: the most hop frequencies first. */
  readonly rules: readonly PowerRule[];
  readonly adaptivity: AdaptivityRule;
  /** What the figures don't say; empty where nothing. */
  readonly remark: string;
}

/** Printed wherever a rule was applied. */
export const LOCAL_RULES_DECIDE =
  "A planning figure, no legal advice: the local rule and the radio's own approval decide.";
