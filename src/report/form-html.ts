import type { FormField } from "../install/index.js";
import { printable } from "../issues/index.js";
import { choicesOf, columnHeading, FORM_TITLE, howToFill, sectionOf, unitWord } from "./form-fields.js";
import { FORM_ROW_COUNTS } from "./form-report.js";
import type { FormReport, FormRoom } from "./form-report.js";
import { htmlText } from "./html-text.js";

type Known = Readonly<Record<string, string | null>>;

/** No script, nothing fetched: one file that prints black on white, a room a page. */
const STYLE = `
@page { margin: 12mm }
* { box-sizing: border-box }
body { margin: 0 auto; max-width: 186mm; color: #000; background: #fff; font: 9.5pt/1.3 sans-serif }
h1 { font-size: 15pt; margin: 0 0 2mm }
h2 { font-size: 12pt; margin: 5mm 0 2mm; border-bottom: 1.5pt solid #000 }
h3 { font-size: 10pt; margin: 3mm 0 1mm }
ul, ol { margin: 0 0 2mm; padding-left: 6mm }
.page { break-before: page }
.card { break-inside: avoid }
h2, h3 { break-after: avoid }
.blanks { display: grid; grid-template-columns: repeat(4, 1fr); gap: 0; margin: 0; border-left: .5pt solid #000; border-top: .5pt solid #000 }
.blank { min-height: 11mm; padding: .6mm 1.2mm; border-right: .5pt solid #000; border-bottom: .5pt solid #000; overflow-wrap: anywhere }
.wide { grid-column: span 2 }
.blank dt { font: 7.5pt monospace }
.blank dd { margin: 0 }
.blank .known { font-weight: bold; font-size: 11pt }
table { width: 100%; border-collapse: collapse }
thead { display: table-header-group }
tr { break-inside: avoid }
th, td { border: .5pt solid #000; padding: .6mm 1.2mm; text-align: left; vertical-align: top; font-weight: normal }
th { font: 7.5pt monospace }
td { height: 9mm }
`;
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/** `stillband form --html`. */
export function formHtml(report: FormReport): string {
  const rooms = report.rooms.map((room, index) => roomPart(report, room, index));
  const rows = (["emitter", "access point", "scan"] as const).map((each) => tablePart(report, each));
  const venueName = report.venueName === null ? null : shown(report.venueName);
  const title = venueName === null ? FORM_TITLE : `${FORM_TITLE}, ${venueName}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${htmlText(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>${htmlText(FORM_TITLE)}</h1>
${list("ul", howToFill(report.units))}
<h2>Venue</h2>
${blanks(report, sectionOf(report, "venue"), { name: venueName }, false)}
<h2>Scan drill</h2>
${list(
  "ol",
  report.drill.map((step) => `☐ ${step}`),
)}
<h2>Cautions</h2>
${list(
  "ul",
  report.cautions.map(({ text }) => text),
)}
${rooms.join("\n")}
<section class="page">
${rows.join("\n")}
</section>
</body>
</html>
`;
}

function roomPart(report: FormReport, room: FormRoom, index: number): string {
  const name = room.name === null ? null : shown(room.name);
  const of = `Room ${index + 1} of ${report.rooms.length}`;
  const points = room.points.map((point, at) => {
    const known = { name: point === null ? null : shown(point), room: name };
    const heading = `Ceiling point ${at + 1} of ${room.points.length}${name === null ? "" : `, ${name}`}`;
    return `<div class="card">
<h3>${htmlText(heading)}</h3>
${blanks(report, sectionOf(report, "ceiling point"), known, true)}
</div>`;
  });
  return `<section class="page">
<h2>${htmlText(name === null ? of : `${of}: ${name}`)}</h2>
${blanks(report, sectionOf(report, "room"), { name }, false)}
${points.join("\n")}
</section>`;
}

/** Boxes to write in, each under its heading. */
function blanks(report: FormReport, fields: readonly FormField[], known: Known, isTable: boolean): string {
  const boxes = fields.map((field) => {
    const choices = choicesOf(field);
    const there = known[field.column] ?? null;
    const answer =
      there !== null
        ? `<span class="known">${htmlText(there)}</span>`
        : htmlText(choices.map((word) => `☐ ${word.replaceAll("-", "\u2011")}`).join(" "));
    const wide = choices.length > WIDE_FROM_COUNT ? " wide" : "";
    return `<div class="blank${wide}"><dt>${htmlText(headingOf(report, field, isTable))}</dt><dd>${answer}</dd></div>`;
  });
  return `<dl class="blanks">\n${boxes.join("\n")}\n</dl>`;
}

const WIDE_FROM_COUNT = 3;

const TITLES = {
  emitter: "Everything else at 2.4 GHz (emitters)",
  "access point": "Wi-Fi access points (sources)",
  scan: "Scans (scans)",
} as const;

function tablePart(report: FormReport, each: keyof typeof FORM_ROW_COUNTS): string {
  const fields = sectionOf(report, each);
  const heads = fields.map((field) => `<th scope="col">${htmlText(headingOf(report, field, false))}</th>`);
  const row = `<tr>${"<td></td>".repeat(fields.length)}</tr>\n`;
  const choices = fields
    .filter((field) => choicesOf(field).length > 0)
    .map((field) => `${field.column}: ${choicesOf(field).join(", ")}`);
  return `<h2>${htmlText(TITLES[each])}</h2>
${choices.length === 0 ? "" : `<p>${htmlText(choices.join("; "))}.</p>\n`}<table>
<thead><tr>${heads.join("")}</tr></thead>
<tbody>
${row.repeat(FORM_ROW_COUNTS[each])}</tbody>
</table>`;
}

/** The heading as it is typed, then what it means. */
function headingOf({ units }: FormReport, field: FormField, isTable: boolean): string {
  const unit = unitWord(field, units);
  const heading = isTable ? columnHeading(field, units) : field.column;
  const own = field.isFiled ? "" : "*";
  const meaning = isTable || unit === "" ? field.title : `${field.title}, ${unit}`;
  return `${heading}${own}: ${meaning}`;
}

function list(tag: "ol" | "ul", items: readonly string[]): string {
  return `<${tag}>\n${items.map((item) => `<li>${htmlText(item)}</li>`).join("\n")}\n</${tag}>`;
}

function shown(name: string): string {
  return printable(name, 60);
}
