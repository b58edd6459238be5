import type { SiteRow } from "../venue/index.js";

/** What a row of a link table is marked with, and what the mark says. */
const MARKS: readonly (readonly [caveat: string, mark: string, words: string])[] = [
  ["beyond-fitted-distance", "*", "beyond 100 m: outside the model."],
  ["below-free-space", "+", "the model gives less loss here than free space would."],
  ["below-reference-distance", "-", "nearer than the model's reference distance."],
  ["near-field", "~", "within three wavelengths: antennas so near have no pattern yet."],
  ["outside-model-range", "#", "outside the distances or frequencies that the model was fitted over."],
  ["null", "^", "in an antenna's null, more than 10 dB below its peak: see Warnings."],
];

/** @returns the marks of a row, for behind its verdict */
export function caveatMarks(row: SiteRow): string {
  const codes = codesOf(row);
  return MARKS.filter(([caveat]) => codes.includes(caveat))
    .map(([, mark]) => mark)
    .join("");
}

/** @returns a line for each mark that stands in the rows */
export function caveatLines(rows: readonly SiteRow[]): string[] {
  const codes = new Set(rows.flatMap(codesOf));
  return MARKS.filter(([caveat]) => codes.has(caveat)).map(([, mark, words]) => `${mark} ${words}`);
}

/** What is within the near field is below the reference distance anyhow. */
const BELOW_REFERENCE = "below-reference-distance";

function codesOf({ caveats, txNull, rxNull }: SiteRow): string[] {
  const codes = caveats.includes("near-field") ? caveats.filter((code) => code !== BELOW_REFERENCE) : caveats;
  return txNull || rxNull ? [...codes, "null"] : [...codes];
}
