import { cautionsFor } from "../install/index.js";
import { SWITCH_VALUES } from "../patch/index.js";
import type { PatchReport } from "../report/index.js";
import { narrowPatch, planPatch } from "../venue/index.js";
import type { PatchPart, PlanPatchOptions } from "../venue/index.js";
import type { LoadedVenue } from "./load-venue.js";

/** Everything that the forms of `patch` tell: the whole venue is patched, a part of it may be shown. */
export function patchReport(
  { venue, issues }: LoadedVenue,
  setting: PlanPatchOptions,
  { room, system }: PatchPart,
): PatchReport {
  return {
    venueName: venue.name,
    patch: narrowPatch(planPatch(venue, setting), { room, system }),
    room: room ?? null,
    system: system ?? null,
    switchCounts: SWITCH_VALUES,
    cautions: cautionsFor(["radio", "emergency"]),
    issues,
  };
}
