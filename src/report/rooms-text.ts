import { evidenceSection } from "./evidence-section.js";
import { couplingTable, jointTable } from "./joint-tables.js";
import { jointStatements } from "./joint-words.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { roomLines, roomTitle } from "./room-lines.js";
import { roomsAssumptions } from "./rooms-assumptions.js";
import { roomsGlance } from "./rooms-glance.js";
import type { RoomsReport } from "./rooms-report.js";
import { bullets, opening, pageText, section } from "./section.js";
import { wrapped } from "./text-layout.js";
import { venueCautions } from "./venue-cautions.js";
import { venueRegulationSections } from "./venue-regulation.js";
import { REQUEST_TITLE, venueRequestLines } from "./venue-request-lines.js";

/** `rooms` for a terminal: all systems at a glance, room by room, the joint plan, what to ask for. */
export function roomsText(report: RoomsReport, style: TextStyle): string {
  const { survey, plan, rooms, request, reviews } = report;
  const parts = [
    opening(roomsGlance(report), style),
    ...rooms.map((room) => section(roomTitle(room), style, opening(roomLines(room, report), style))),
    ...(plan.systems.length === 0 && plan.excluded.length === 0
      ? []
      : [section("Joint plan", style, planLines(report, style))]),
    ...(plan.couplings.length === 0
      ? []
      : [
          section("What the systems put into each other", style, [
            ...couplingTable(plan.couplings, style),
            ...wrapped(couplingWords(report), style.columnCount),
          ]),
        ]),
    ...(request === null ? [] : [section(REQUEST_TITLE, style, venueRequestLines(request, survey, style))]),
    ...venueRegulationSections(
      plan.systems.map(({ system }) => system.name),
      reviews,
      style,
    ),
    section("Assumed", style, bullets(roomsAssumptions(report), style)),
    ...evidenceSections(report, style),
    section("Cautions", style, bullets(venueCautions(report.venue), style)),
  ];
  return pageText(parts);
}

function evidenceSections({ venue, survey }: RoomsReport, style: TextStyle): string[][] {
  if (venue.scans.length === 0) return [];
  return [evidenceSection(survey, style)];
}

function planLines(report: RoomsReport, style: TextStyle): string[] {
  const table = report.plan.systems.length === 0 ? [] : jointTable(report, style);
  const marks = report.plan.systems.length === 0 ? [] : wrapped(MARKS, style.columnCount);
  return [...table, ...marks, ...bullets(jointStatements(report), style)];
}

const MARKS = "In dB; x fails < 0 <= ! thin < 6 <= o sound < 15 <= * ample.";

/** How that table is read. */
export function couplingWords({ plan: { couplings } }: RoomsReport): string {
  const needed = [...new Set(couplings.map(({ requiredCiDb }) => fixed(requiredCiDb, 0)))].join(" or ");
  return `At the receiver that hears it most: its level if both were on one channel, its level in the plan, and the wanted level over that (C/I; ${needed} dB needed). Costs: what the hearing system would have to spare more without it.`;
}
