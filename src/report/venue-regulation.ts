import { printable } from "../issues/index.js";
import type { RegulationReview } from "../radio/index.js";
import type { TextStyle } from "./pen.js";
import { regulationSection } from "./regulation-lines.js";
import { wrapped } from "./text-layout.js";

/** Each system's radio against the region's rule; systems of one radio are told of once. */
export function venueRegulationSections(
  systems: readonly string[],
  reviews: ReadonlyMap<string, RegulationReview>,
  style: TextStyle,
): string[][] {
  const told = new Map<string, { readonly names: string[]; readonly lines: readonly string[] }>();
  for (const name of systems)
    for (const lines of regulationSection(reviews.get(name) ?? null, style)) {
      const known = told.get(lines.join("\n"));
      if (known === undefined) told.set(lines.join("\n"), { names: [name], lines });
      else known.names.push(name);
    }
  return [...told.values()].map(({ names, lines: [title, ...lines] }) => [
    title!,
    ...wrapped(`Of ${names.map((name) => printable(name, 30)).join(", ")}:`, style.columnCount),
    ...lines,
  ]);
}
