import type { FormField } from "../install/index.js";
import { printable } from "../issues/index.js";
import { choicesOf, columnHeading, FORM_TITLE, howToFill, sectionOf, unitWord } from "./form-fields.js";
import { FORM_ROW_COUNTS } from "./form-report.js";
import type { FormReport, FormRoom } from "./form-report.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { bullets, section } from "./section.js";
import { columnsOf, wrapped } from "./text-layout.js";

/** What is known of a line already, by column. */
type Known = Readonly<Record<string, string | null>>;

const WIDTHS = {
  text: 18,
  length: 8,
  weight: 8,
  number: 6,
  amperes: 6,
  angle: 5,
  time: 18,
  choice: 18,
} as const;
/** Words that are ringed where they stand; more of them are written in. */
const LONGEST_CHOICES = 52;
const GAP = "   ";

/** `stillband form` as text: 80 columns, a blank line under each line to write on. */
export function formText(report: FormReport, style: TextStyle): string {
  const { units } = report;
  const page: TextStyle = { ...style, units, columnCount: Math.min(style.columnCount, 80) };
  const parts = [
    section(FORM_TITLE, page, [...bullets(howToFill(units), page)]),
    section("Venue", page, blankLines(sectionOf(report, "venue"), { name: report.venueName }, page)),
    section("Scan drill", page, drillLines(report, page)),
    ...report.rooms.flatMap((room, index) => roomParts(report, room, index, page)),
    ...(["emitter", "access point", "scan"] as const).map((each) => rowsPart(report, each, page)),
    section("What the headings mean", page, legend(report, page)),
    section(
      "Cautions",
      page,
      bullets(
        report.cautions.map(({ text }) => text),
        page,
      ),
    ),
  ];
  return `${parts.map((lines) => lines.join("\n").trimEnd()).join("\n\n")}\n`;
}

function drillLines({ drill }: FormReport, { columnCount }: TextStyle): string[] {
  return drill.flatMap((step, index) => wrapped(`[ ] ${index + 1} ${step}`, columnCount, "      "));
}

function roomParts(report: FormReport, room: FormRoom, index: number, style: TextStyle): string[][] {
  const name = room.name === null ? null : printable(room.name, 40);
  const title = `Room ${index + 1} of ${report.rooms.length}${name === null ? "" : `: ${name}`}`;
  const points = room.points.map((point, at) => {
    const known = { name: point === null ? null : printable(point, 40), room: name };
    const heading = `Ceiling point ${at + 1} of ${room.points.length}${name === null ? "" : `, ${name}`}`;
    return section(heading, style, blankLines(sectionOf(report, "ceiling point"), known, style, true));
  });
  return [section(title, style, blankLines(sectionOf(report, "room"), { name }, style)), ...points];
}

const ROW_TITLES = {
  emitter: "Everything else at 2.4 GHz (emitters)",
  "access point": "Wi-Fi access points (sources)",
  scan: "Scans (scans)",
} as const;

function rowsPart(report: FormReport, each: keyof typeof FORM_ROW_COUNTS, style: TextStyle): string[] {
  const fields = sectionOf(report, each);
  const rows = Array.from({ length: FORM_ROW_COUNTS[each] }, () => blankLines(fields, {}, style));
  return section(ROW_TITLES[each], style, rows.flat());
}

/** The blanks of one line of a table, as many to a line of text as have room. */
function blankLines(
  fields: readonly FormField[],
  known: Known,
  { units, columnCount }: TextStyle,
  isTable = false,
): string[] {
  const lines: string[] = [];
  let line = "";
  for (const field of fields) {
    const blank = blankOf(field, known[field.column] ?? null, units, isTable);
    const next = line === "" ? `  ${blank}` : `${line}${GAP}${blank}`;
    if (columnsOf(next) > columnCount && line !== "") {
      lines.push(line, "");
      line = `  ${blank}`;
    } else line = next;
  }
  return [...lines, line, ""];
}

function blankOf(field: FormField, known: string | null, units: LengthUnit, isTable: boolean): string {
  const heading = headingOf(field, units, isTable);
  if (known !== null) return `${heading}: ${known}`;
  const choices = choicesOf(field).join(" / ");
  if (choices !== "" && choices.length <= LONGEST_CHOICES) return `${heading}: ${choices}`;
  const blank = "_".repeat(WIDTHS[field.answer.kind]);
  const unit = isTable ? "" : unitWord(field, units);
  return `${heading} ${blank}${unit === "" ? "" : ` ${unit}`}`;
}

function headingOf(field: FormField, units: LengthUnit, isTable: boolean): string {
  const heading = isTable ? columnHeading(field, units) : field.column;
  return field.isFiled ? heading : `${heading}*`;
}

function legend({ sections }: FormReport, style: TextStyle): string[] {
  return sections.flatMap(({ each, fields }) => {
    const words = fields.map((field) => {
      const choices = choicesOf(field);
      return `${field.column}: ${field.title}${choices.length === 0 ? "" : ` (${choices.join(", ")})`}`;
    });
    return wrapped(`Each ${each}: ${words.join("; ")}.`, style.columnCount, "  ");
  });
}
