import type { Issue } from "../../issues/index.js";
import { evidenceStatements, issueLines } from "../../report/index.js";
import type { PlanReport } from "../../report/index.js";
import { list, markup } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { part } from "../html/sheet.js";
import { columnsOf, table } from "../html/table.js";
import type { PageParts } from "../page-parts.js";
import { figureSources, standardSources } from "./standard-sources.js";

/** How far the plan can be trusted: looks, figures assumed, files read, sources of figures. */
export function evidenceParts(parts: PageParts): Content[] {
  const { report } = parts;
  const notes = issueLines(shownIssues(report));
  return [
    part("Evidence", evidence(report), roomEvidence(parts)),
    part("Figures that the plan rests on without having measured them", assumptionTable(parts)),
    part("Where the radios' figures come from", figureSources(parts)),
    part("Standards and practice behind the figures", list(standardSources(report))),
    part("Files read", fileTable(report)),
    notes.length === 0 ? null : part("Notes on what was read", list(notes)),
  ];
}

/** Without the text as read where it could be somebody's name. */
function shownIssues({ issues, showsNames }: PlanReport): PlanReport["issues"] {
  if (showsNames) return issues;
  return issues.map((issue) => {
    const shown: { -readonly [Key in keyof Issue]: Issue[Key] } = { ...issue };
    delete shown.value;
    return shown;
  });
}

function evidence({ rooms: { survey, venue } }: PlanReport): Content {
  if (venue.scans.length === 0) return markup`<p>No scan: noise and what the venue file lists alone.</p>\n`;
  return list(evidenceStatements(survey));
}

function roomEvidence({ report }: PageParts): Content {
  const rows = report.rooms.rooms.map(({ room, evidence: its }) => [
    room,
    its === null ? "none" : its.grade,
    its === null ? "the room was not scanned" : its.reasons.join("; "),
    its === null ? "scan it full" : its.next,
  ]);
  const columns = columnsOf("room", "evidence", "why", "next look");
  return table({ id: "evidence", caption: "Evidence of each room", columns, rows });
}

function assumptionTable({ report, figures }: PageParts): Content {
  const rows = report.record.assumptions.map(({ name, value }, index) => [
    name,
    typeof value === "number"
      ? figures.figure("asIs", `/assumptions/${String(index)}/value`)
      : value === null
        ? "none"
        : String(value),
  ]);
  return table({ id: "assumptions", caption: "Assumptions", columns: columnsOf("figure", "-value"), rows });
}

function fileTable({ record }: PlanReport): Content {
  const rows = record.inputs.map(({ name, kind, digest }) => [name, kind, digest]);
  const caption = `Made by stillband ${record.program} from these files`;
  return table({ id: "files", caption, columns: columnsOf("file", "kind", "digest"), rows });
}
