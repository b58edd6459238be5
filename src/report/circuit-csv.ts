import type { HangReport } from "./hang-report.js";
import type { CsvTable } from "./csv-table.js";

/** The circuit sheet as a table: a row a luminaire with what its circuit has, in the order of the run. */
export function circuitRowsCsv({ plan }: HangReport): CsvTable {
  const { rows, withoutCircuit } = plan.circuits;
  const fed = rows.flatMap((row) => {
    const { circuit, control, feed, luminaires, choice, supplyV, breakerA, loadA, countedA, verdict } = row;
    const ofCircuit = [circuit, control, feed, supplyV, breakerA, row.watts, loadA, countedA, verdict];
    const cord = [choice.conductor?.name ?? null, choice.decidedBy, choice.gap];
    const flags = row.flags.join(" ");
    if (luminaires.length === 0) return [[...ofCircuit, ...cord, null, null, null, null, null, flags]];
    return luminaires.map((name, index) => {
      const from = feed === "through-fed" && index > 0 ? luminaires[index - 1]! : null;
      const drop = row.drops[index];
      const way = [name, from, row.feedsM[index] ?? null, drop?.dropV ?? null, drop?.dropRatio ?? null];
      return [...ofCircuit, ...cord, ...way, flags];
    });
  });
  const unfed = withoutCircuit.map((name) => [
    ...Array.from({ length: CIRCUIT_HEADS.length }, () => null),
    ...[name, null, null, null, null, "no-circuit"],
  ]);
  return { heads: [...CIRCUIT_HEADS, ...RUN_HEADS], rows: [...fed, ...unfed] };
}

const CIRCUIT_HEADS = [
  ...[
    "circuit",
    "control",
    "feed",
    "supply_v",
    "breaker_a",
    "circuit_watts",
    "load_a",
    "counted_a",
    "verdict",
  ],
  ...["conductor", "decided_by", "no_conductor_because"],
];
const RUN_HEADS = ["luminaire", "cord_from", "cord_m", "drop_v", "drop_ratio", "flags"];
