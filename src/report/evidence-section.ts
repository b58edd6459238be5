import type { Survey } from "../scan/index.js";
import type { TextStyle } from "./pen.js";
import { bullets, section } from "./section.js";
import { evidenceLines, rowsLine, sourcesLine, sweepLines } from "./survey-lines.js";

/** How far the scans can be trusted, and what was read. */
export function evidenceSection(survey: Survey, style: TextStyle): string[] {
  return section("Evidence", style, bullets(evidenceStatements(survey), style));
}

/** The same, a statement each. */
export function evidenceStatements(survey: Survey): string[] {
  return [...evidenceLines(survey), sourcesLine(survey), ...sweepLines(survey), rowsLine(survey)];
}
