import { printable } from "../issues/index.js";
import type { CircuitFlag, CircuitRow, CircuitSheet } from "../install/index.js";
import { lengthCell, lengthHead } from "./hang-words.js";
import type { HangReport } from "./hang-report.js";
import { fixed } from "./number-format.js";
import { nameOf } from "./patch-words.js";
import type { TextStyle } from "./pen.js";
import { clipped, tableLines } from "./text-layout.js";

/** How a circuit's luminaires are fed. */
export const FEED_WORDS: Readonly<Record<CircuitRow["feed"], string>> = {
  "own-box": "own box",
  "through-fed": "through",
  unknown: "?",
};
/** What is known of a cord that nothing decides yet. */
const ASK = "ASK";

/** One row a circuit: load against breaker first, then the cord. */
export function circuitTable({ rows }: CircuitSheet, style: TextStyle): string[] {
  return tableLines(
    [
      { head: "circuit", align: "left" },
      { head: "verdict", align: "left" },
      { head: "cord", align: "left" },
      { head: "feed", align: "left" },
      { head: "breaker", align: "right" },
      { head: "counted", align: "right" },
      { head: "load", align: "right" },
      { head: "watts", align: "right" },
      { head: "drop", align: "right" },
    ],
    rows.map((row) => [
      shortCircuit(row.circuit),
      { within: "within", beyond: "BEYOND", "not-judged": "open" }[row.verdict],
      row.choice.conductor?.name ?? ASK,
      FEED_WORDS[row.feed],
      withUnit(row.breakerA, 0, "A"),
      withUnit(row.countedA, 1, "A"),
      withUnit(row.loadA, 1, "A"),
      `${row.unknownLoads.length > 0 ? ">" : ""}${fixed(row.watts, 0)} W`,
      row.greatestDropRatio === null ? "____" : `${fixed(row.greatestDropRatio * 100, 2)} %`,
    ]),
    style.columnCount,
  );
}

function withUnit(value: number | null, placeCount: number, unit: string): string {
  if (value === null) return "____";
  return `${Number.isInteger(value) ? fixed(value, 0) : fixed(value, Math.max(1, placeCount))} ${unit}`;
}

function shortCircuit(name: string): string {
  return clipped(printable(name, 40), 10);
}

/** One row a luminaire under its circuit, in the order of the run: its cord and what is lost on the way. */
export function runTable({ plan }: HangReport, style: TextStyle): string[] {
  const { rows } = plan.circuits;
  const cells = rows.flatMap((row) =>
    row.luminaires.map((name, index) => [
      `  ${clipped(printable(name, 40), 14)}`,
      lengthCell(row.feedsM[index] ?? null, style.units),
      clipped(cordFrom(row, index), 14),
      row.drops[index] === undefined ? "____" : `${fixed(row.drops[index].dropV, 2)} V`,
      row.drops[index] === undefined ? "____" : `${fixed(row.drops[index].dropRatio * 100, 2)} %`,
    ]),
  );
  const [head = "", ...lines] = tableLines(
    [
      { head: "  luminaire", align: "left" },
      { head: lengthHead("cord", style.units), align: "right" },
      { head: "from", align: "left" },
      { head: "drop", align: "right" },
      { head: "share", align: "right" },
    ],
    cells,
    style.columnCount,
  );
  let at = 0;
  return [
    head,
    ...rows.flatMap((row) => [
      clipped(circuitHeading(row), style.columnCount),
      ...lines.slice(at, (at += row.luminaires.length)),
    ]),
  ];
}

/** Where the cord of a circuit's luminaire comes from. */
export function cordFrom({ feed, luminaires }: CircuitRow, index: number): string {
  if (feed === "unknown") return "?";
  return feed === "through-fed" && index > 0 ? printable(luminaires[index - 1]!, 40) : "its box";
}

const DECIDED_WORDS = { use: "by use", ampacity: "by the breaker", drop: "by voltage drop" };
const GAP_WORDS = {
  "breaker-not-given": "not chosen: the breaker is not given",
  "beyond-table": "not chosen: beyond the table",
};

function circuitHeading(row: CircuitRow): string {
  return `${nameOf(row.circuit)}, ${withUnit(row.supplyV, 0, "V")}: ${cordChoice(row)}`;
}

/** The cord of a circuit and what decided it, or why none is chosen. */
export function cordChoice({ choice: { conductor, decidedBy, gap } }: CircuitRow): string {
  return conductor === null || decidedBy === null
    ? `cord ${gap === null ? ASK : GAP_WORDS[gap]}`
    : `${conductor.name} and earth, ${DECIDED_WORDS[decidedBy]}`;
}

/** What the electrician has to see or answer, the gravest first, a statement each. */
export function circuitFlagLines({ plan, circuitFlagWords }: HangReport): string[] {
  const { rows, withoutCircuit } = plan.circuits;
  const flags = Object.keys(circuitFlagWords) as CircuitFlag[];
  const told = flags.flatMap((flag) => {
    const having = rows.filter((row) => row.flags.includes(flag));
    if (having.length === 0) return [];
    const names = having.map((row) => nameOf(row.circuit));
    const where = having.length === rows.length && rows.length > 1 ? "every circuit" : names.join(", ");
    return `${where}: ${circuitFlagWords[flag]}.`;
  });
  if (withoutCircuit.length === 0) return told;
  return [...told, `No circuit given, ask what feeds them: ${withoutCircuit.map(nameOf).join(", ")}.`];
}
