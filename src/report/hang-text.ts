import { printable } from "../issues/index.js";
import { checkAssumptions, orderAssumptions } from "./crew-assumptions.js";
import { circuitAssumptions } from "./circuit-assumptions.js";
import { circuitFlagLines, circuitTable, runTable } from "./circuit-tables.js";
import { STAGE_TITLES, stageLines } from "./check-lines.js";
import { emergencyLines } from "./emergency-lines.js";
import { hangAssumptions } from "./hang-assumptions.js";
import { hangFlagLines } from "./hang-flag-lines.js";
import { hangGlance } from "./hang-glance.js";
import { cutTable, heightTable, levelTable, weightTable } from "./hang-tables.js";
import { lengthWords } from "./hang-words.js";
import type { CrewSheet, HangReport } from "./hang-report.js";
import { orderGapLines, orderLines } from "./order-lines.js";
import { nameOf } from "./patch-words.js";
import type { TextStyle } from "./pen.js";
import { bullets, opening, pageText, section } from "./section.js";
import { clipped, wrapped } from "./text-layout.js";
import { troubleLines } from "./trouble-lines.js";

/** The crew's sheets: the answer, then a sheet for each of those who work by them. */
export function hangText(report: HangReport, style: TextStyle): string {
  const glance = hangGlance(report, style.units);
  const parts = [
    opening(glance, style),
    ...report.sheets.flatMap((sheet) => sheetParts(sheet, report, style)),
  ];
  return pageText(parts);
}

/** What each sheet is, and whom it is for. */
export const SHEET_TITLES: Readonly<Record<CrewSheet, string>> = {
  hang: "HANG SHEET for the riggers",
  circuits: "CIRCUITS AND CORDS for the licensed electrician",
  order: "ORDER LIST for the office",
  checks: "INSTALL ORDER AND CHECKS for the crew",
  trouble: "TROUBLE CARD for the booth",
};

const BODIES: Readonly<Record<CrewSheet, (report: HangReport, style: TextStyle) => string[][]>> = {
  hang: hangBody,
  circuits: circuitsBody,
  order: orderBody,
  checks: checksBody,
  trouble: ({ plan }, style) => [troubleLines(plan.trouble, style)],
};

function sheetParts(sheet: CrewSheet, report: HangReport, style: TextStyle): string[][] {
  const { venueName, room, system, cautions } = report;
  const part = room ?? system;
  const of = `${printable(venueName, 40)}${part === null ? "" : `, ${nameOf(part)} alone`}`;
  return [
    [
      "=".repeat(style.columnCount),
      style.pen.strong(clipped(`${SHEET_TITLES[sheet]}: ${of}`, style.columnCount)),
    ],
    ...BODIES[sheet](report, style),
    section("Emergency and exit lighting", style, emergencyLines(report.plan.hang.emergency, style)),
    section(
      "Cautions",
      style,
      cautions[sheet].map(({ text }) => text),
    ),
  ];
}

function hangBody(report: HangReport, style: TextStyle): string[][] {
  const { plan } = report;
  const flags = hangFlagLines(report, style.units);
  const lengths = orderLines({ lines: plan.order.lines.filter(({ kind }) => kind === "lengths") }, style, {
    withNeeds: false,
  });
  const datums = plan.hang.datums.map(
    ({ room, laserLineM }) =>
      `${nameOf(room)}: laser line ${laserLineM === null ? "____" : lengthWords(laserLineM, style.units)} above the floor (datum)`,
  );
  return [
    section(
      "Before anything is lifted",
      style,
      flags.length === 0 ? ["Nothing stands in the way."] : bullets(flags, style),
    ),
    section(
      "Datum",
      style,
      datums.map((line) => clipped(line, style.columnCount)),
    ),
    section("Cut and hang, in this order", style, cutTable(plan, style)),
    section("Rows to one trim", style, levelTable(plan, style)),
    section("How the lengths come about", style, heightTable(plan, style)),
    section("Weight against ratings", style, weightTable(plan, style)),
    section("In all, with waste", style, lengths),
    section("Assumed", style, bullets(hangAssumptions(report, style.units), style)),
  ];
}

function circuitsBody(report: HangReport, style: TextStyle): string[][] {
  const { circuits } = report.plan;
  const flags = circuitFlagLines(report);
  return [
    section("See and answer", style, flags.length === 0 ? ["Nothing is open."] : bullets(flags, style)),
    section("Circuits", style, circuitTable(circuits, style)),
    section("Cords along each circuit", style, runTable(report, style)),
    section("Assumed", style, bullets(circuitAssumptions(report), style)),
  ];
}

function orderBody(report: HangReport, style: TextStyle): string[][] {
  const { order } = report.plan;
  const gaps = orderGapLines(order);
  return [
    section("Order", style, orderLines(order, style)),
    section("Open", style, gaps.length === 0 ? ["Nothing."] : bullets(gaps, style)),
    section("Assumed", style, bullets(orderAssumptions(report), style)),
  ];
}

function checksBody(report: HangReport, style: TextStyle): string[][] {
  const { checks } = report.plan;
  const stages = (Object.keys(STAGE_TITLES) as (keyof typeof STAGE_TITLES)[]).filter((stage) =>
    checks.some((check) => check.stage === stage),
  );
  return [
    wrapped(CHECKS_KEY, style.columnCount),
    ...stages.map((stage) => section(STAGE_TITLES[stage], style, stageLines(checks, stage, style))),
    section("Assumed", style, bullets(checkAssumptions(), style)),
  ];
}

/** How the checks are worked by. */
export const CHECKS_KEY =
  "In the order of the work. Blanks under a link at trim are columns of a readings file; --sheet checks -o readings.csv writes that file to type them into: the readings that prove the job; stillband verify VENUE --readings readings.csv holds them to the plan.";
