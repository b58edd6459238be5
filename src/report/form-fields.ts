import type { FormField, FormSection } from "../install/index.js";
import type { FormReport } from "./form-report.js";
import type { LengthUnit } from "./pen.js";

/** Of a section that the form always has. */
export function sectionOf({ sections }: FormReport, each: FormSection["each"]): readonly FormField[] {
  return sections.find((section) => section.each === each)?.fields ?? [];
}

/** The unit that a blank is filled in; blank where it has none. */
export function unitWord({ answer }: FormField, units: LengthUnit): string {
  switch (answer.kind) {
    case "length":
      return units;
    case "weight":
      return units === "m" ? "kg" : "lb";
    case "angle":
      return "deg";
    case "amperes":
      return "A";
    default:
      return "";
  }
}

/**
 * A heading of luminaires.csv: the column with its unit, as its reader knows it.
 * @example columnHeading({ column: "trim_height", isFiled: true, title: "Trim height", answer: { kind: "length" } }, "ft"); // => "trim_height (ft)"
 */
export function columnHeading(field: FormField, units: LengthUnit): string {
  const unit = unitWord(field, units);
  return unit === "" ? field.column : `${field.column} (${unit})`;
}

/** The words to choose among; none where anything may stand. */
export function choicesOf({ answer }: FormField): readonly string[] {
  return answer.kind === "choice" ? answer.choices : [];
}

export const FORM_TITLE = "Survey form: wireless DMX at 2.4 GHz";

/** How the form is filled and typed in, a sentence each. */
export function howToFill(units: LengthUnit): string[] {
  const lengths = units === "m" ? "metres and kilograms" : "feet and pounds";
  return [
    `Lengths and weights in ${lengths}, heights from the floor under the point. Ring one of several words.`,
    "Ceiling points: a line each in luminaires.csv, under these very headings. The rest: venue.yaml, under these very keys.",
    "* the crew's own: in luminaires.csv a column like any other, and stillband hang computes with those it knows; in venue.yaml type it as a comment behind #.",
    "What nobody knows stays unknown: write unknown or leave it blank; never a guess. Emergency or exit lighting is unknown until someone who answers for the house has said.",
  ];
}
