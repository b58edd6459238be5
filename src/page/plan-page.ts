import type { PlanReport } from "../report/index.js";
import { Figures } from "./html/figures.js";
import { list, markup, trusted } from "./html/markup.js";
import type { Content, Markup } from "./html/markup.js";
import { dateWords, sheetMarkup } from "./html/sheet.js";
import type { Sheet } from "./html/sheet.js";
import type { PageParts } from "./page-parts.js";
import { PAGE_SCRIPT } from "./page-script.js";
import { PAGE_STYLE } from "./page-style.js";
import type { Picture } from "./picture.js";
import { SourceNames } from "./source-names.js";
import { clientSheet } from "./sheets/client-sheet.js";
import { crewSheet } from "./sheets/crew-sheet.js";
import { electricianSheet } from "./sheets/electrician-sheet.js";
import { networkSheet } from "./sheets/network-sheet.js";
import { officeSheet } from "./sheets/office-sheet.js";
import { operatorSheet } from "./sheets/operator-sheet.js";
import { radioSheet } from "./sheets/radio-sheet.js";
import { riggerSheet } from "./sheets/rigger-sheet.js";
import { troubleSheet } from "./sheets/trouble-sheet.js";

/**
 * The report page of a plan: one file that fetches nothing, a sheet for each of those who work by it, the answer
 * first. Every figure in it is looked up in the plan file.
 * @param json the plan file's value, as `planJson` gives it
 * @param pictures any, placed by what they show
 * @param sha256Base64 the digest of a text's UTF-8 bytes: the page's policy lets run only its own style and script
 * @throws {RangeError} where the plan file lacks a figure that the page shows
 */
export function planPage(
  report: PlanReport,
  json: object,
  pictures: readonly Picture[],
  sha256Base64: (text: string) => string,
): string {
  const { units, name } = report.rooms.venue;
  const figures = new Figures(json, units);
  const sheets = sheetsOf({ report, figures, pictures, sources: new SourceNames(report) });
  const policy = `default-src 'none'; style-src 'sha256-${sha256Base64(PAGE_STYLE)}'; script-src 'sha256-${sha256Base64(PAGE_SCRIPT)}'; img-src data:; base-uri 'none'; form-action 'none'`;
  return markup`<!doctype html>
<html lang="en" data-length="${units}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${trusted(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>Wireless DMX plan: ${name}</title>
<style>${trusted(PAGE_STYLE)}</style>
</head>
<body>
<a class="skip" href="#answer">To the answer</a>
${top(sheets, report)}<main>
${sheets.map((sheet) => sheetMarkup(sheet, report))}</main>
<footer class="end">
<p>Figures are rounded from plan.json; a dotted line under one means that it says how it came about, and so do the lists under the tables. The plan says what was computed and what was assumed. It certifies nothing.</p>
</footer>
<script>${trusted(PAGE_SCRIPT)}</script>
</body>
</html>
`.html;
}

function sheetsOf(parts: PageParts): Sheet[] {
  const { hang, patch } = parts.report;
  return [
    clientSheet(parts),
    networkSheet(parts),
    radioSheet(parts),
    ...(hang === null ? [] : [electricianSheet(hang, parts), riggerSheet(hang, parts)]),
    ...(patch === null ? [] : [operatorSheet(patch, parts)]),
    ...(hang === null ? [] : [crewSheet(hang, parts), troubleSheet(hang)]),
    officeSheet(hang, parts),
  ];
}

function top(sheets: readonly Sheet[], report: PlanReport): Markup {
  const links: Content[] = sheets.map(({ id, whom }) => markup`<a href="#${id}">${whom}</a>`);
  return markup`<header class="top">
<h1>Wireless DMX plan: ${report.rooms.venue.name}</h1>
<p class="sub">${dateWords(report)}, revision ${report.revision ?? "none named"}, stillband ${report.record.program}</p>
<nav aria-label="Sheets">
<p>Sheets for</p>
${list(links)}</nav>
</header>
`;
}
