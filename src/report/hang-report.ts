import type { Caution, CircuitFlag, HangFigures, HangFlag } from "../install/index.js";
import type { Issue } from "../issues/index.js";
import type { HangPlan, PlanHangOptions } from "../venue/index.js";

/** The crew's sheets, each for somebody. */
export type CrewSheet = "hang" | "circuits" | "order" | "checks" | "trouble";

/** All that the crew's sheets tell, in whatever form. */
export interface HangReport {
  readonly venueName: string;
  /** What is shown of it. */
  readonly plan: HangPlan;
  readonly options: PlanHangOptions;
  /** The sheets that are shown, in their order. */
  readonly sheets: readonly CrewSheet[];
  /** The one room that is shown; null: all. */
  readonly room: string | null;
  /** The one system that is shown; null: all. */
  readonly system: string | null;
  readonly hangFlagWords: Readonly<Record<HangFlag, string>>;
  readonly circuitFlagWords: Readonly<Record<CircuitFlag, string>>;
  /** What the hang sheet takes where nobody gave a figure. */
  readonly defaults: HangFigures;
  readonly cautions: Readonly<Record<CrewSheet, readonly Caution[]>>;
  /** Of the venue file and of the crew's own columns. */
  readonly issues: readonly Issue[];
}
