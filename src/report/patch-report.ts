import type { Caution } from "../install/index.js";
import type { Issue } from "../issues/index.js";
import type { PatchPlan } from "../venue/index.js";

/** All that the address sheet and the labels tell, in whatever form. */
export interface PatchReport {
  readonly venueName: string;
  /** What is shown of it. */
  readonly patch: PatchPlan;
  /** The one room that is shown; null: all. */
  readonly room: string | null;
  /** The one system that is shown; null: all. */
  readonly system: string | null;
  readonly switchCounts: readonly number[];
  readonly cautions: readonly Caution[];
  /** Of the venue file. */
  readonly issues: readonly Issue[];
}
