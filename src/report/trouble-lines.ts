import { printable } from "../issues/index.js";
import type { TroubleEntry } from "../install/index.js";
import type { TextStyle } from "./pen.js";
import { hanging } from "./section.js";

/** The page for the booth: each trouble, and what to do in order. */
export function troubleLines(entries: readonly TroubleEntry[], style: TextStyle): string[] {
  return entries.flatMap(({ sign, steps }) => [
    style.pen.strong(sign),
    ...steps.flatMap((step, index) => hanging(`  ${index + 1} `, printable(step, 2000), style.columnCount)),
  ]);
}
