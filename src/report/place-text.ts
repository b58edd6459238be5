import { evidenceSection } from "./evidence-section.js";
import { printable } from "../issues/index.js";
import type { TextStyle } from "./pen.js";
import { placeAssumptions } from "./place-assumptions.js";
import { placeGlance } from "./place-glance.js";
import type { FloorPicture, PlacedSystem, PlaceReport, SystemPlacement } from "./place-report.js";
import { placesTable } from "./place-tables.js";
import { pairLines } from "./pair-lines.js";
import { antennaInBrief, placeName, planLength } from "./place-words.js";
import { planKey } from "./plan-key.js";
import { floorTitle, placedFloor, placedMargins } from "./plan-model.js";
import { PLAN_COLUMNS, planLegend, planPicture } from "./plan-picture.js";
import { bullets, opening, pageText, section } from "./section.js";
import { wrapped } from "./text-layout.js";
import { venueCautions } from "./venue-cautions.js";

/** `place` for a terminal: where each system's transmitter goes, then what the others give up, and the floor. */
export function placeText(report: PlaceReport, style: TextStyle): string {
  const { systems, survey } = report;
  const glances = systems.map((system) => opening(placeGlance(report, system, style.units), style));
  const parts = [
    ...glances,
    ...systems.flatMap((system) => systemSections(report, system, style)),
    section("Assumed", style, bullets(placeAssumptions(report, style.units), style)),
    evidenceSection(survey, style),
    section("Cautions", style, bullets(venueCautions(report.venue), style)),
  ];
  return pageText(parts);
}

function systemSections(report: PlaceReport, { name, placed }: PlacedSystem, style: TextStyle): string[][] {
  if (placed === null) return [];
  const title = printable(name, 40);
  const grid = gridWords(report, placed, style);
  return [
    section(`${title}: places, dB to spare at the weakest receiver`, style, [
      ...placesTable(placed, style),
      ...bullets(grid === null ? [] : [grid], style),
    ]),
    ...placed.pictures.map((picture) => floorSection(report, placed, picture, style)),
    ...(placed.plan.pair === null
      ? []
      : [
          section(
            `${title}: two transmitters, each with a channel of its own`,
            style,
            pairLines(placed, style),
          ),
        ]),
  ];
}

function gridWords(
  { grid: { stepM } }: PlaceReport,
  { plan }: SystemPlacement,
  style: TextStyle,
): string | null {
  if (plan.grid === null) return null;
  const { triedCount, keptOutCount } = plan.grid;
  return `${triedCount} points of a grid of ${planLength(stepM, style.units)} ${style.units} judged, ${keptOutCount} more left out by the keep-outs; the best three at least 2 m apart.`;
}

/** One room's floor: what is left at the weakest receiver, by where the transmitter stands. */
function floorSection(
  { venue: { walls } }: PlaceReport,
  placed: SystemPlacement,
  picture: FloorPicture,
  style: TextStyle,
): string[] {
  const { plan } = placed;
  const narrow = { ...style, columnCount: PLAN_COLUMNS };
  const up = `${planLength(picture.heightM, style.units)} ${style.units} up, ${antennaInBrief(plan.gridAntenna)}`;
  return section(`${floorTitle(picture.room)}: dB to spare, transmitter ${up}`, style, [
    ...planPicture(placedFloor(walls, placed, picture), narrow),
    ...planLegend(true),
    ...wrapped(
      `letters: the places above${plan.pair === null ? "" : ", P and Q the two below"}; numbers: receivers${choiceTitle(placed)}`,
      narrow.columnCount,
    ),
    ...planKey(placedMargins(placed), narrow),
  ]);
}

function choiceTitle({ plan }: SystemPlacement): string {
  return plan.choice === null ? "" : `, dB to spare from the ${placeName(plan.choice)} chosen:`;
}
