import type { PracticeCheck } from "../venue/index.js";
import { fixed } from "./number-format.js";
import { clipped } from "./text-layout.js";
import { mToFeet } from "../units/index.js";
import type { LengthUnit, TextStyle } from "./pen.js";

const MARKS: Readonly<Record<PracticeCheck["state"], string>> = {
  kept: "kept  ",
  broken: "BROKEN",
  look: "look  ",
};

/** How the antennas are placed, a line a rule: kept or broken by what was told, the rest to look at on site. */
export function practiceLines(practice: readonly PracticeCheck[], style: TextStyle): string[] {
  return practice.map((check) => clipped(practiceLine(check, style.units), style.columnCount));
}

/** One rule: `kept    transmitter antenna in the room`. */
export function practiceLine(check: PracticeCheck, units: LengthUnit): string {
  return `${MARKS[check.state]}  ${check.reason}${figureWords(check, units)}`;
}

/** The heading of that section. */
export const PRACTICE_TITLE = "Antenna practice (common practice, no source)";

function figureWords({ figureM }: PracticeCheck, units: LengthUnit): string {
  if (figureM === null) return "";
  const value = units === "ft" ? mToFeet(figureM) : figureM;
  return ` (${fixed(value, Number.isInteger(value) ? 0 : 1)} ${units} here)`;
}
