import type { HangFigures, HangRow } from "../install/index.js";
import { lengthWords } from "./hang-words.js";
import type { HangReport } from "./hang-report.js";
import { exactPercent } from "./number-format.js";
import { countOf } from "./patch-words.js";
import type { LengthUnit } from "./pen.js";

/** What the hang sheet rests on, one statement a line. */
export function hangAssumptions(report: HangReport, units: LengthUnit): string[] {
  const { plan, options } = report;
  const { hang } = plan;
  const { mayHangBelowTrim = false, levelsRows = true } = options;
  const through = plan.circuits.rows.some(
    ({ feed, luminaires }) => feed === "through-fed" && luminaires.length > 1,
  );
  return [
    "Trim is from one datum, the laser line, to the lowest point of the luminaire; from the local floor only where its row says so (trim_from). Ceiling heights are those of each point above the floor under it.",
    "drop = ceiling - trim - hardware (canopy, hooks, eye bolt) - body, to be filled by chain, rope or stem. off trim: how much higher (+) or lower (-) it comes out, as links are whole.",
    `${levelsRows ? "Rows of one room, group and trim are brought level by a link more or less (--unlevelled turns it off)" : "Rows are not brought level (--unlevelled): each is nearest to its own trim"}; ${mayHangBelowTrim ? "below trim where that is nearer (--below-trim)" : "never below trim (--below-trim allows it)"}. The eye forgives ${lengthWords(hang.eyeToleranceM, units)} within a row (--tolerance${options.eyeToleranceM === undefined ? ", assumed" : ""}). Chain does not stretch.`,
    "cord = suspension + hardware + weave + make-up at the box + reach to the inlet; where it comes from another luminaire, as the circuit sheet has it. safety = straight from an anchor of its own to the eye bolt, and slack.",
    ...assumedFigures(report, units),
    "Weight = luminaire, chain, cord, receiver and hardware, each part held to all of it: within or beyond the figure typed in, never safe. Above 50 lb (23 kg) not from a box unless it is listed for it (NEC 314.27, from memory; local code decides).",
    ...(through
      ? ["A luminaire that feeds the next one carries that one's cord too: add it to its hardware_weight."]
      : []),
    `Order of hanging: as addresses are patched, by system, room and group as the venue file lists them; hang_order in a row changes it. Order with ${exactPercent(hang.wasteRatio)} waste (--waste-share${options.wasteRatio === undefined ? ", assumed" : ""}).`,
  ];
}

/** Figures that nobody gave, and what was taken. */
function assumedFigures({ plan, defaults }: HangReport, units: LengthUnit): string[] {
  const { rows } = plan.hang;
  const keys = [...new Set(rows.flatMap(({ assumed }) => assumed))];
  if (keys.length === 0) return [];
  const told = keys.map((key) => {
    const count = rows.filter(({ assumed }) => assumed.includes(key)).length;
    const whose = count === rows.length ? "" : ` (${countOf(count, "luminaire")})`;
    return `${TAKEN[key]?.(defaults, units) ?? key}${whose}`;
  });
  return [`Not given, so taken (common practice, no source): ${told.join("; ")}.`];
}

type Told = (defaults: HangFigures, units: LengthUnit) => string;

const TAKEN: Readonly<Partial<Record<HangRow["assumed"][number], Told>>> = {
  suspension: ({ suspension }) => `hung by ${suspension} (suspension)`,
  canopyM: ({ canopyM }, units) => `canopy ${lengthWords(canopyM, units)} high (canopy_height)`,
  topHookM: ({ topHookM }, units) => `upper hook ${lengthWords(topHookM, units)} (top_hook)`,
  bottomHookM: ({ bottomHookM }, units) => `lower hook ${lengthWords(bottomHookM, units)} (bottom_hook)`,
  eyeBoltM: ({ eyeBoltM }, units) => `eye bolt ${lengthWords(eyeBoltM, units)} (eye_bolt)`,
  weaveRatio: ({ weaveRatio }) => `weave ${exactPercent(weaveRatio)} of the suspension (--weave-share)`,
  boxMakeUpM: ({ boxMakeUpM }, units) => `make-up ${lengthWords(boxMakeUpM, units)} at the box (box_make_up)`,
  inletReachM: ({ inletReachM }, units) =>
    `reach ${lengthWords(inletReachM, units)} to the inlet (inlet_reach)`,
  safetyOffsetM: () => "the safety cable's anchor straight above (safety_offset)",
  safetySlackM: ({ safetySlackM }, units) =>
    `safety cable's slack ${lengthWords(safetySlackM, units)} (safety_slack)`,
  hardwareKg: () => "hooks and canopy weigh nothing (hardware_weight)",
};
