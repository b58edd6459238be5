import type { PlanReport } from "../report/index.js";
import type { Figures } from "./html/figures.js";
import type { Picture } from "./picture.js";
import type { SourceNames } from "./source-names.js";

/** What every sheet is made from. */
export interface PageParts {
  readonly report: PlanReport;
  readonly figures: Figures;
  readonly pictures: readonly Picture[];
  readonly sources: SourceNames;
}
