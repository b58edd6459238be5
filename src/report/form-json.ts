import type { FormField } from "../install/index.js";
import type { Issue } from "../issues/index.js";
import { choicesOf, columnHeading, unitWord } from "./form-fields.js";
import type { FormReport } from "./form-report.js";

/** `stillband form --json`: the form as data, for whoever draws it otherwise. */
export function formJson(report: FormReport, issues: readonly Issue[]): object {
  const { units, rooms, sections, drill, venueName, cautions } = report;
  return {
    schema: "stillband/form@1",
    issues,
    units,
    venue: venueName,
    rooms,
    sections: sections.map(({ each, fields }) => ({
      each,
      fields: fields.map((field) => fieldBlock(field, units)),
    })),
    drill,
    cautions: cautions.map(({ text }) => text),
  };
}

function fieldBlock(field: FormField, units: FormReport["units"]): object {
  const unit = unitWord(field, units);
  return {
    column: field.column,
    heading: columnHeading(field, units),
    filed: field.isFiled,
    title: field.title,
    kind: field.answer.kind,
    unit: unit === "" ? null : unit,
    choices: choicesOf(field),
  };
}
