import type { Circuit, CircuitLuminaire, CrewFigures, HangRow } from "../install/index.js";
import type { Luminaire } from "./venue-luminaire.js";
import type { Venue } from "./venue.js";

/** What the lengths of cord are worked out from. */
export interface CircuitLoadTerms {
  readonly circuits: readonly Circuit[];
  readonly figuresOf: ReadonlyMap<string, CrewFigures>;
  /** Of the hang sheet, by luminaire. */
  readonly rowOf: ReadonlyMap<string, HangRow>;
}

/**
 * A venue's luminaires as loads, in the order of the file: that of a through-fed run. The cord to each is what its
 * own column states; else from its own box the hang sheet's; on a through-fed run from the luminaire before it, up
 * along that one's suspension, straight across the ceiling and down along its own. Null where it can't be said, and
 * where nobody has said how the circuit is fed.
 */
export function circuitLoads(
  { luminaires, rooms, storeys }: Pick<Venue, "luminaires" | "rooms" | "storeys">,
  terms: CircuitLoadTerms,
): CircuitLuminaire[] {
  const floorM = new Map(
    rooms.map(({ name, storey }) => [name, storeys.find((one) => one.name === storey)?.floorM ?? 0] as const),
  );
  const lastOf = new Map<string, Luminaire>();
  return luminaires.map((luminaire) => {
    const { name, room, circuit, watts, emergency } = luminaire;
    const before = circuit === null ? undefined : lastOf.get(circuit);
    if (circuit !== null) lastOf.set(circuit, luminaire);
    const feed = terms.circuits.find((one) => one.circuit === circuit)?.feed ?? "unknown";
    const point = terms.figuresOf.get(name)?.point ?? {};
    const ways = { ...terms, floorM };
    return {
      ...{ name, room, circuit, watts, emergency, powerFactorRatio: point.powerFactorRatio ?? null },
      feedM: point.feedM ?? (feed === "unknown" ? null : cordM(luminaire, feed, before, ways)),
    };
  });
}

interface Ways extends CircuitLoadTerms {
  readonly floorM: ReadonlyMap<string, number>;
}

function cordM(
  luminaire: Luminaire,
  feed: "own-box" | "through-fed",
  before: Luminaire | undefined,
  ways: Ways,
): number | null {
  const own = ways.rowOf.get(luminaire.name);
  if (feed === "own-box" || before === undefined) return own?.cord?.lengthM ?? null;
  const upM = alongM(ways.rowOf.get(before.name));
  const downM = alongM(own);
  const acrossM = betweenM(luminaire, before, ways);
  return upM === null || downM === null || acrossM === null ? null : upM + acrossM + downM;
}

/** Along a luminaire's suspension, inlet to ceiling point, without the make-up in a box. */
function alongM(row: HangRow | undefined): number | null {
  const cord = row?.cord ?? null;
  return cord === null ? null : cord.lengthM - cord.boxMakeUpM;
}

/** Straight from one ceiling point to the other. */
function betweenM(one: Luminaire, other: Luminaire, { rowOf, floorM }: Ways): number | null {
  const [fromM, toM] = [one, other].map(({ name, room }) => {
    const heightM = rowOf.get(name)?.ceilingHeightM ?? null;
    return heightM === null ? null : heightM + (floorM.get(room) ?? 0);
  }) as [number | null, number | null];
  return fromM === null || toM === null ? null : Math.hypot(one.x - other.x, one.y - other.y, fromM - toM);
}
