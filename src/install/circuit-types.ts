import type { CordConductor } from "./cord-conductors.js";
import type { EmergencyNotice } from "./emergency-notice.js";

/** What stands between the breaker and a luminaire. */
export type CircuitControl =
  "none" | "dimmer" | "wall-switch" | "sensor" | "time-clock" | "transfer-switch" | "unknown";

/** A luminaire as a load; their order is that of a through-fed run. */
export interface CircuitLuminaire {
  readonly name: string;
  readonly room: string;
  readonly circuit: string | null;
  readonly watts: number | null;
  /** Null: the sheet's. */
  readonly powerFactorRatio?: number | null;
  /** Cord from its box, or from the luminaire before it, m; null: not known. */
  readonly feedM?: number | null;
  readonly emergency?: "yes" | "no" | "unknown";
}

/** What is known of a circuit; left open: unknown. */
export interface Circuit {
  readonly circuit: string;
  /** Null: the sheet's. */
  readonly supplyV?: number | null;
  readonly breakerA?: number | null;
  readonly control?: CircuitControl;
  /** Each luminaire on its own box, or fed through from one to the next. */
  readonly feed?: "own-box" | "through-fed" | "unknown";
  readonly earth?: "yes" | "no" | "unknown";
  readonly sharedNeutral?: "yes" | "no" | "unknown";
  /** Lost between panel and the first box, V, as measured or worked out by the electrician. */
  readonly upstreamDropV?: number | null;
  /** How many of these drivers the maker's table allows on such a breaker, for their inrush. */
  readonly mostDriversCount?: number | null;
}

/** How a circuit sheet is worked out. */
export interface CircuitOptions {
  readonly luminaires: readonly CircuitLuminaire[];
  readonly circuits?: readonly Circuit[];
  /** `US` and `CA` take the continuous-load factor 1.25. */
  readonly region?: string | null;
  /** Load that is on for hours counts by this much more; null: the region's, else 1 and told. */
  readonly continuousFactorRatio?: number | null;
  readonly supplyV?: number | null;
  /** 0.9 unless given (assumed); the maker's figure is better. */
  readonly powerFactorRatio?: number;
  readonly sizes?: "awg" | "mm2";
  /** Conductors of the cord that carry current; 2 unless given. */
  readonly loadedCount?: 2 | 3;
  /** Greatest share of the voltage lost; 0.03 unless given (advisory, NEC 210.19(A), read second-hand). */
  readonly mostDropRatio?: number;
}

/** What the electrician has to see or answer. */
export type CircuitFlag =
  | "dimmer"
  | "wall-switch"
  | "sensor"
  | "time-clock"
  | "transfer-switch"
  | "control-unknown"
  | "beyond-breaker"
  | "beyond-drivers"
  | "beyond-drop"
  | "no-earth"
  | "shared-neutral"
  | "ask-watts"
  | "ask-supply"
  | "ask-breaker"
  | "ask-continuous-factor"
  | "ask-feed"
  | "ask-feed-length"
  | "ask-inrush"
  | "ask-earth"
  | "ask-shared-neutral";

/** The smallest conductor that every reason allows. */
export interface ConductorChoice {
  /** Null: see `gap`. */
  readonly conductor: CordConductor | null;
  readonly byUse: CordConductor;
  /** Sized to the breaker. */
  readonly byAmpacity: CordConductor | null;
  /** Null: not judged, or none of the table is enough. */
  readonly byDrop: CordConductor | null;
  readonly decidedBy: "use" | "ampacity" | "drop" | null;
  readonly isDropJudged: boolean;
  readonly gap: "breaker-not-given" | "beyond-table" | null;
}

/** What is lost on the way to a luminaire. */
export interface LuminaireDrop {
  readonly name: string;
  /** In the cord and before it, V. */
  readonly dropV: number;
  readonly dropRatio: number;
}

/** A circuit on the electrician's sheet. */
export interface CircuitRow {
  readonly circuit: string;
  readonly control: CircuitControl;
  readonly feed: "own-box" | "through-fed" | "unknown";
  readonly luminaires: readonly string[];
  /** Cord to each of them, m; null: not known. */
  readonly feedsM: readonly (number | null)[];
  /** Sum of what is known. */
  readonly watts: number;
  /** Luminaires whose watts are not given. */
  readonly unknownLoads: readonly string[];
  readonly supplyV: number | null;
  readonly breakerA: number | null;
  /** Of the known loads, by power factor. */
  readonly loadA: number | null;
  /** `loadA` by the continuous factor. */
  readonly countedA: number | null;
  readonly verdict: "within" | "beyond" | "not-judged";
  readonly choice: ConductorChoice;
  /** With the conductor chosen; empty where it can't be said. */
  readonly drops: readonly LuminaireDrop[];
  readonly greatestDropRatio: number | null;
  readonly flags: readonly CircuitFlag[];
}

/** The sheet for the electrician; it certifies nothing. */
export interface CircuitSheet {
  readonly rows: readonly CircuitRow[];
  /** Luminaires of which nobody has said what feeds them. */
  readonly withoutCircuit: readonly string[];
  readonly continuousFactorRatio: number;
  /** Where that factor comes from. */
  readonly continuousFactorStatus: "region" | "given" | "not-given";
  readonly powerFactorAssumed: boolean;
  readonly mostDropRatio: number;
  readonly loadedCount: 2 | 3;
  readonly emergency: EmergencyNotice;
}
