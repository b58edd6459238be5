import { cautionsFor, CIRCUIT_FLAG_WORDS, HANG_DEFAULTS, HANG_FLAG_WORDS } from "../install/index.js";
import type { Caution } from "../install/index.js";
import type { CrewSheet, HangReport } from "../report/index.js";
import { narrowHang, planHang } from "../venue/index.js";
import type { HangPart, PlanHangOptions } from "../venue/index.js";
import type { LoadedVenue } from "./load-venue.js";

/** What each sheet asks people to do. */
const CAUTIONS: Readonly<Record<CrewSheet, readonly Caution[]>> = {
  hang: cautionsFor(["overhead", "lift", "drilling", "emergency"]),
  circuits: cautionsFor(["mains", "control", "emergency"]),
  order: cautionsFor(["overhead", "mains", "radio"]),
  checks: cautionsFor(["overhead", "lift", "drilling", "mains", "control", "radio", "emergency"]),
  trouble: cautionsFor(["lift", "mains", "emergency"]),
};

/** Everything that the forms of `hang` tell: the whole venue is planned, a part of it may be shown. */
export function hangReport(
  { venue, issues }: LoadedVenue,
  options: PlanHangOptions,
  { room, system }: HangPart,
  sheets: readonly CrewSheet[],
): HangReport {
  const whole = planHang(venue, options);
  return {
    venueName: venue.name,
    plan: narrowHang(whole, venue, { room, system }, options),
    ...{ options, sheets, room: room ?? null, system: system ?? null },
    hangFlagWords: HANG_FLAG_WORDS,
    circuitFlagWords: CIRCUIT_FLAG_WORDS,
    defaults: HANG_DEFAULTS,
    cautions: CAUTIONS,
    issues: [...issues, ...whole.issues],
  };
}
