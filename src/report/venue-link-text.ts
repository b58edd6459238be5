import { evidenceSection } from "./evidence-section.js";
import { printable } from "../issues/index.js";
import type { SystemLinks, Venue } from "../venue/index.js";
import { chancePercent, exactPercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { antennaInBrief, whereOnPlan } from "./place-words.js";
import { floorTitle, linkFloors } from "./plan-model.js";
import { fittedLines } from "./forecast-lines.js";
import { PLAN_COLUMNS, planLegend, planPicture } from "./plan-picture.js";
import { PRACTICE_TITLE, practiceLines } from "./practice-lines.js";
import { bullets, opening, pageText, section } from "./section.js";
import { wrapped } from "./text-layout.js";
import { venueBudgetSections } from "./venue-budget-lines.js";
import { venueCautions } from "./venue-cautions.js";
import { venueLinkAssumptions } from "./venue-link-assumptions.js";
import { venueLinkGlance } from "./venue-link-glance.js";
import type { VenueLinkReport } from "./venue-link-report.js";
import { mendsTable, receiversTable } from "./venue-link-tables.js";
import { channelWords } from "./venue-link-words.js";
import { venueRegulationSections } from "./venue-regulation.js";
import { verdictMark } from "./verdict-mark.js";

/** `link` of a venue for a terminal: the weakest first, what hurts it, what would mend it, where it hangs. */
export function venueLinkText(report: VenueLinkReport, style: TextStyle): string {
  const { survey, systems, venue } = report;
  const glance = opening(venueLinkGlance(report, style.units), style);
  const parts = [
    glance,
    ...(report.receiver === null
      ? systems.flatMap((one) => systemSections(report, one, style))
      : venueBudgetSections(report, report.receiver, style)),
    ...venueRegulationSections(
      systems.map(({ system }) => system.name),
      report.reviews,
      style,
    ),
    section("Assumed", style, bullets(venueLinkAssumptions(report, style.units), style)),
    ...(venue.scans.length === 0 ? [] : [evidenceSection(survey, style)]),
    section("Cautions", style, bullets(venueCautions(report.venue), style)),
  ];
  return pageText(parts);
}

function systemSections(report: VenueLinkReport, one: SystemLinks, style: TextStyle): string[][] {
  const name = printable(one.system.name, 30);
  if (one.receivers.length === 0)
    return [section(name, style, wrapped(`${name}: not judged: ${one.reason}.`, style.columnCount))];
  return [
    section(`${name}: ${channelWords(one)}, weakest first`, style, [
      ...wrapped(transmitterWords(one, style), style.columnCount),
      ...receiversTable(one, style),
      ...wrapped(READING, style.columnCount),
      ...wrapped(jobWords(one, report.terms.reliability), style.columnCount),
      ...fittedLines(one, report, style),
    ]),
    section(`${name}: what hurts most, beyond 10 m in the open; what would mend it`, style, [
      ...mendsTable(one, report, style),
      ...wrapped(MENDS, style.columnCount),
    ]),
    ...plans(report.venue, one, style),
    section(`${name}: ${PRACTICE_TITLE.toLowerCase()}`, style, practiceLines(one.practice, style)),
  ];
}

const READING =
  "* share of frames lost at the typical position; x fails < 0 <= ! thin < 6 <= o sound < 15 <= * ample, in dB to spare.";

function transmitterWords(
  { transmitter, isCandidate, isSettled, channel }: SystemLinks,
  style: TextStyle,
): string {
  const place = `Transmitter ${printable(transmitter!.name, 30)} at ${whereOnPlan(transmitter!, style.units)}, ${antennaInBrief(transmitter!.antenna)}.`;
  const candidate = isCandidate
    ? " Not placed yet: this is its first candidate; stillband place compares them."
    : "";
  const chosen =
    channel === null || isSettled
      ? ""
      : " The channel is the best for this system alone; stillband rooms settles them jointly.";
  return `${place}${candidate}${chosen}`;
}

const MENDS =
  "Each mend alone, for that receiver; a dipole or panel is the transmitter's, aimed at it; 2nd: a second transmitter, which is a second system on a channel of its own.";

/** The share is per receiver: what it means for all, at that share and as they are. */
function jobWords({ job, receivers }: SystemLinks, reliability: number): string {
  const each = `${exactPercent(reliability)} is per receiver`;
  const asTheyAre = receivers.reduce((product, { heldRatio }) => product * heldRatio, 1);
  const inHoles = receivers.reduce((sum, { heldRatio }) => sum + 1 - heldRatio, 0);
  const now = `With these margins ${holeCount(inHoles)} of ${receivers.length} in a hole on average; all hold with ${chancePercent(asTheyAre)}.`;
  if (job === null || job.receiverCount === 1) return `${each}, and there is one. ${now}`;
  return `${each}: were each held to that, ${holeCount(job.expectedInHoleCount)} of ${job.receiverCount} in a hole on average, and all hold with ${chancePercent(job.allHoldProbability)}. ${now}`;
}

function holeCount(count: number): string {
  return count < 0.01 ? "under 0.01" : String(Number(count.toPrecision(2)));
}

/** Each room with receivers of the system: T the transmitter, numbers with their verdicts' marks. */
function plans(venue: Venue, one: SystemLinks, style: TextStyle): string[][] {
  const narrow = { ...style, columnCount: Math.min(style.columnCount, PLAN_COLUMNS) };
  return linkFloors(venue, one).map((floor) => {
    const spots = floor.spots.map(({ mark, at, workingMarginDb }) => ({
      mark: workingMarginDb === null ? mark : `${mark}${verdictMark(workingMarginDb)}`,
      at,
    }));
    const title = `${floorTitle(floor.room)}: T the transmitter, receivers by # with their marks`;
    return section(title, style, [...planPicture({ ...floor, spots }, narrow), ...planLegend(false)]);
  });
}
