import type { Issue } from "../issues/index.js";
import type { Circuit, CrewFigures } from "../install/index.js";
import type { Venue } from "./venue.js";

/** A venue's circuits, and where its luminaires contradict each other about them. */
export interface VenueCircuits {
  readonly circuits: readonly Circuit[];
  readonly issues: readonly Issue[];
}

/**
 * What is known of each circuit: the venue file's own list, then the columns of its luminaires, then what holds for
 * all. Where luminaires of one circuit contradict each other, the gravest word stands (a dimmer, no earth, a shared
 * neutral); any other figure is left open, whatever holds for all. Both are told.
 * @param forAll of circuits that say nothing themselves
 */
export function venueCircuits(
  { luminaires, circuits }: Pick<Venue, "luminaires" | "circuits">,
  figuresOf: ReadonlyMap<string, CrewFigures>,
  forAll: Partial<Circuit> = {},
): VenueCircuits {
  const issues: Issue[] = [];
  const names = [
    ...circuits.map(({ circuit }) => circuit),
    ...luminaires.flatMap(({ circuit }) => circuit ?? []),
  ];
  const merged = [...new Set(names)].map((name) => {
    const rows = luminaires
      .filter(({ circuit }) => circuit === name)
      .map(({ name: luminaire }) => ({ luminaire, said: figuresOf.get(luminaire)?.circuit ?? {} }));
    const own = saidOf(circuits.find(({ circuit }) => circuit === name) ?? {});
    return { ...agreed(name, rows, own, forAll, issues), ...own, circuit: name };
  });
  return { circuits: merged, issues };
}

/** Without what is only said to be unknown. */
function saidOf(circuit: Partial<Circuit>): Partial<Circuit> {
  return Object.fromEntries(Object.entries(circuit).filter(([, value]) => value !== "unknown"));
}

/** A circuit's figures and words by their keys. */
type Said = Readonly<Record<string, string | number>>;

interface CircuitRow {
  readonly luminaire: string;
  readonly said: Partial<Circuit>;
}

/** What the rows of a circuit say of it with one voice; the list of the venue file outranks them. */
function agreed(
  circuit: string,
  rows: readonly CircuitRow[],
  own: Partial<Circuit>,
  forAll: Partial<Circuit>,
  issues: Issue[],
): Partial<Circuit> {
  const found: Record<string, string | number> = {};
  const open = new Set<string>();
  for (const { luminaire, said } of rows)
    for (const [key, value] of Object.entries(saidOf(said) as Said)) {
      const settled = (own as Said)[key] ?? found[key];
      if (settled === undefined || settled === value) found[key] ??= value;
      else {
        if (!Object.hasOwn(own, key)) open.add(key);
        const { source, column } = { source: `circuit ${circuit}`, column: key };
        const expected = `${settled} as before, or no cell: ${luminaire} contradicts it`;
        issues.push({
          ...{ code: "contradiction", severity: "warning", source, column, value: String(value), expected },
          action: "value ignored",
        });
      }
    }
  for (const [key, grave] of Object.entries(GRAVEST))
    if (open.has(key) && rows.some(({ said }) => said[key as keyof typeof GRAVEST] === grave)) {
      found[key] = grave;
      open.delete(key);
    }
  return Object.fromEntries(Object.entries({ ...forAll, ...found }).filter(([key]) => !open.has(key)));
}

/** What one row is enough for, whatever the others say: it stands until somebody has traced it. */
const GRAVEST = { control: "dimmer", earth: "no", sharedNeutral: "yes" } as const;
