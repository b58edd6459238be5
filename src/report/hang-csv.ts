import type { CrewSheet, HangReport } from "./hang-report.js";
import { circuitRowsCsv } from "./circuit-csv.js";
import { checkWords } from "./check-lines.js";
import { tenThousandths } from "./csv-table.js";
import type { CsvTable } from "./csv-table.js";
import { cordOf } from "./hang-words.js";
import { LENGTH_WORDS, PIECE_WORDS } from "./order-lines.js";
import type { LengthUnit } from "./pen.js";

/**
 * One of the crew's sheets as a table for a spreadsheet; lengths m, weights kg. The checks are a readings file to
 * type into: only rows of a link at trim are readings.
 */
export function hangCsv(report: HangReport, sheet: CrewSheet, units: LengthUnit): CsvTable {
  const { heads, rows } = tableOf(report, sheet, units);
  return { heads, rows: rows.map((row) => row.map(tenThousandths)) };
}

function tableOf(report: HangReport, sheet: CrewSheet, units: LengthUnit): CsvTable {
  if (sheet === "hang") return hangRows(report);
  if (sheet === "circuits") return circuitRowsCsv(report);
  if (sheet === "order") return orderRows(report);
  return sheet === "checks" ? checkRows(report, units) : troubleRows(report);
}

function hangRows({ plan }: HangReport): CsvTable {
  const { rows, doNotHang } = plan.hang;
  return {
    heads: HANG_HEADS,
    rows: rows.map((row) => {
      const { lengthM, from } = cordOf(plan, row);
      return [
        ...[row.hangRank, row.name, row.room, row.group, doNotHang.includes(row.name) ? "DO NOT HANG" : null],
        ...[row.suspension, row.stepM, row.stepCount, row.suspensionM, lengthM, from, row.safetyM],
        ...[row.ceilingHeightM, row.trimHeightM, row.trimAboveLineM, row.hardwareM, row.bodyHeightM],
        ...[row.dropM, row.trimErrorM, row.unevenM, row.gap, row.load.totalKg],
        ...row.load.checks.map(({ ratedKg }) => ratedKg),
        row.flags.includes("emergency") ? "yes" : row.flags.includes("emergency-unknown") ? "unknown" : "no",
        row.flags.join(" "),
      ];
    }),
  };
}

const HANG_HEADS = [
  ...["order", "luminaire", "room", "group", "do_not_hang", "suspension", "step_m", "step_count"],
  ...["suspension_m", "cord_m", "cord_from", "safety_m", "ceiling_m", "trim_m", "above_laser_line_m"],
  ...["hardware_m", "body_m", "drop_m", "above_trim_m", "uneven_m", "no_length_because", "weight_kg"],
  ...[
    "suspension_rated_kg",
    "hook_rated_kg",
    "box_or_support_rated_kg",
    "safety_rated_kg",
    "emergency",
    "flags",
  ],
];

function orderRows({ plan }: HangReport): CsvTable {
  return {
    heads: [
      ...["item", "words", "conductor", "step_m", "order_pieces", "needed_pieces", "spare_pieces", "order_m"],
      ...["needed_m", "spool_m", "spools", "longer_than_a_spool", "needed_by"],
    ],
    rows: plan.order.lines.map((line) => {
      const names = line.needs.map(({ name }) => name).join("; ");
      if (line.kind === "pieces") {
        const counts = [line.orderCount, line.neededCount, line.spareCount];
        return [
          line.item,
          PIECE_WORDS[line.item],
          null,
          null,
          ...counts,
          null,
          null,
          null,
          null,
          null,
          names,
        ];
      }
      const { orderM, lengthM, spoolM, spoolCount, tooLongCount } = line.order;
      return [
        ...[
          line.item,
          LENGTH_WORDS[line.item],
          line.conductor,
          line.stepM,
          null,
          line.order.pieceCount,
          null,
        ],
        ...[orderM, lengthM, spoolM, spoolCount, tooLongCount, names],
      ];
    }),
  };
}

/** Heads that a readings file knows are those of a reading alone. */
function checkRows({ plan }: HangReport, units: LengthUnit): CsvTable {
  const columns = [
    ...new Set(
      plan.checks.flatMap(({ blanks }) =>
        blanks.flatMap((one) => (one.kind === "reading" ? one.column : [])),
      ),
    ),
  ];
  return {
    heads: ["step", "stage", "check", "subject", "words", "done", ...columns, "write_down"],
    rows: plan.checks.map((check, index) => {
      const { stage, code, subject, blanks } = check;
      const filled = columns.map(
        (column) => blanks.find((one) => one.kind === "reading" && one.column === column)?.filled ?? null,
      );
      const notes = blanks.flatMap((one) => (one.kind === "note" ? `${one.column}:` : []));
      return [index + 1, stage, code, subject, checkWords(check, units), null, ...filled, notes.join(" ")];
    }),
  };
}

function troubleRows({ plan }: HangReport): CsvTable {
  return {
    heads: ["trouble", "sign", "step", "words"],
    rows: plan.trouble.flatMap(({ code, sign, steps }) =>
      steps.map((step, index) => [code, sign, index + 1, step]),
    ),
  };
}
