import type { Issue } from "../issues/index.js";
import { crewFigures } from "../install/index.js";
import type { CrewFigures } from "../install/index.js";
import type { Venue } from "./venue.js";

/** What each luminaire's own columns say, by its name, and the cells that can't be what their columns say. */
export interface CrewReading {
  readonly figuresOf: ReadonlyMap<string, CrewFigures>;
  readonly issues: readonly Issue[];
}

/** Reads the crew's own columns of a venue's luminaires; a cell that can't be read is left open, and told. */
export function readCrewColumns({ luminaires, units }: Pick<Venue, "luminaires" | "units">): CrewReading {
  const figuresOf = new Map<string, CrewFigures>();
  const issues: Issue[] = [];
  for (const { name, further } of luminaires) {
    const figures = crewFigures(further, units);
    figuresOf.set(name, figures);
    for (const { column, value, expected } of figures.faults)
      issues.push({
        ...{ code: "bad-cell", severity: "warning", source: `luminaire ${name}` },
        ...{ column, value, expected, action: "value ignored" },
      });
  }
  return { figuresOf, issues };
}
