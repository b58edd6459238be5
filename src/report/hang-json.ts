import type { CircuitRow, InstallCheck, LengthLine, PieceLine } from "../install/index.js";
import { checkWords } from "./check-lines.js";
import { circuitAssumptions } from "./circuit-assumptions.js";
import { checkAssumptions, orderAssumptions } from "./crew-assumptions.js";
import { hangAssumptions } from "./hang-assumptions.js";
import { cordOf, GAP_WORDS } from "./hang-words.js";
import type { HangReport } from "./hang-report.js";
import type { LengthUnit } from "./pen.js";

/** `stillband hang --json`: all five sheets, numbers not rounded, null with a reason. */
export function hangJson(report: HangReport, units: LengthUnit): object {
  const { plan, venueName, room, system, issues, cautions } = report;
  const { hang, circuits, order, checks, trouble, terms, sizes } = plan;
  return {
    schema: "stillband/hang@1",
    issues,
    venue: { name: venueName },
    shown: { room, system },
    hang: {
      ...hang,
      rows: hang.rows.map((row) => ({
        ...row,
        gapReason: row.gap === null ? null : GAP_WORDS[row.gap],
        weightReason: row.load.totalKg === null ? `not given: ${row.load.missing.join(", ")}` : null,
        cordToCut: cordOf(plan, row),
      })),
      lineReason: "a laser line is null where none is set up yet",
      assumptions: hangAssumptions(report, units),
    },
    circuits: {
      ...circuits,
      sizes,
      rows: circuits.rows.map(circuitBlock),
      assumptions: circuitAssumptions(report),
    },
    order: { ...order, lines: order.lines.map(lineBlock), assumptions: orderAssumptions(report) },
    checks: { rows: checks.map((check) => checkBlock(check, units)), assumptions: checkAssumptions() },
    trouble,
    systems: terms.systems,
    emergency: hang.emergency,
    cautions,
  };
}

function circuitBlock(row: CircuitRow): object {
  const { choice, supplyV, breakerA } = row;
  return {
    ...row,
    conductorReason:
      choice.gap === null
        ? null
        : choice.gap === "beyond-table"
          ? "no size in the table is enough"
          : "the breaker is not given",
    loadReason: supplyV === null ? "the voltage is not given" : null,
    breakerReason: breakerA === null ? "not given" : null,
    dropReason:
      row.greatestDropRatio === null ? "a length, a load, the voltage or the conductor is open" : null,
  };
}

function lineBlock(line: PieceLine | LengthLine): object {
  if (line.kind === "pieces") return line;
  return { ...line, spoolReason: line.order.spoolCount === null ? "ordered by the length" : null };
}

function checkBlock(check: InstallCheck, units: LengthUnit): object {
  const { code, stage, subject, blanks } = check;
  return { code, stage, subject, words: checkWords(check, units), blanks };
}
