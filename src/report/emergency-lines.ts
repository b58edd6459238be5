import { printable } from "../issues/index.js";
import type { EmergencyNotice } from "../install/index.js";
import type { TextStyle } from "./pen.js";
import { bullets } from "./section.js";

/** What every sheet of the crew says of emergency and exit lighting: who counts, and of whom nobody knows. */
export function emergencyLines(notice: EmergencyNotice, style: TextStyle): string[] {
  return bullets(emergencyStatements(notice), style);
}

/** The same, a statement each. */
export function emergencyStatements({ names, unknownNames }: EmergencyNotice): string[] {
  const counts =
    names.length === 0
      ? "None is stated to count as emergency or exit lighting."
      : `COUNT as emergency or exit lighting, must not depend on the radio link: ${listed(names)}.`;
  const unknown =
    unknownNames.length === 0
      ? "Every luminaire is stated: none is unknown."
      : unknownNames.length === 1
        ? `NOT KNOWN whether it counts: ${listed(unknownNames)}. Ask before it hangs.`
        : `NOT KNOWN whether they count: ${listed(unknownNames)}. Ask before they hang.`;
  return [counts, unknown];
}

function listed(names: readonly string[]): string {
  return names.map((name) => printable(name, 40)).join(", ");
}
