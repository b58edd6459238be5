import {
  circuitAssumptions,
  circuitFlagLines,
  cordChoice,
  cordFrom,
  FEED_WORDS,
  nameOf,
} from "../../report/index.js";
import type { HangReport } from "../../report/index.js";
import { list } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { part } from "../html/sheet.js";
import type { Sheet } from "../html/sheet.js";
import { columnsOf, measured, table } from "../html/table.js";
import type { PageParts } from "../page-parts.js";
import { crewCautions, crewGlance, statementsOr } from "./crew-parts.js";

const BLANK = { none: "____" };
const VERDICTS = { within: "within", beyond: "BEYOND", "not-judged": "open" } as const;

/** Circuits and cords. */
export function electricianSheet(hang: HangReport, parts: PageParts): Sheet {
  return {
    id: "circuits",
    title: "Circuits and cords",
    whom: "the licensed electrician",
    body: [
      crewGlance("circuits", hang, parts),
      crewCautions("circuits", hang),
      part("See and answer", statementsOr(circuitFlagLines(hang), "Nothing is open.")),
      part("Circuits", circuitTable(hang, parts)),
      part("Cords along each circuit", runTable(hang, parts)),
      part("Assumed", list(circuitAssumptions(hang))),
    ],
  };
}

function circuitTable({ plan }: HangReport, { figures }: PageParts): Content {
  const rows = plan.circuits.rows.map((row, index) => {
    const at = `/hang/circuits/rows/${String(index)}`;
    return [
      nameOf(row.circuit),
      VERDICTS[row.verdict],
      cordChoice(row),
      FEED_WORDS[row.feed],
      figures.figure("volts", `${at}/supplyV`, BLANK),
      figures.figure("amps", `${at}/breakerA`, BLANK),
      figures.figure("amps", `${at}/countedA`, BLANK),
      figures.figure("amps", `${at}/loadA`, BLANK),
      [row.unknownLoads.length > 0 ? "over " : "", figures.figure("watts", `${at}/watts`)],
      figures.figure("drop", `${at}/greatestDropRatio`, BLANK),
    ];
  });
  const heads = [
    "circuit",
    "verdict",
    "cord",
    "feed",
    "-supply",
    "-breaker",
    "-counted",
    "-load",
    "-watts",
    "-drop",
  ];
  return table({ id: "circuit-table", caption: "Load against breaker", columns: columnsOf(...heads), rows });
}

function runTable({ plan }: HangReport, { figures }: PageParts): Content {
  const rows = plan.circuits.rows.flatMap((row, index) =>
    row.luminaires.map((name, at) => {
      const circuit = `/hang/circuits/rows/${String(index)}`;
      const drop = `${circuit}/drops/${String(at)}`;
      const isKnown = row.drops[at] !== undefined;
      return [
        nameOf(name),
        nameOf(row.circuit),
        row.feedsM[at] === undefined
          ? "____"
          : figures.length("cut", `${circuit}/feedsM/${String(at)}`, BLANK),
        cordFrom(row, at),
        isKnown ? figures.figure("lostVolts", `${drop}/dropV`) : "____",
        isKnown ? figures.figure("drop", `${drop}/dropRatio`) : "____",
      ];
    }),
  );
  const columns = [
    ...columnsOf("luminaire", "circuit"),
    measured("cord", "m", "ft in"),
    ...columnsOf("from", "-drop", "-share"),
  ];
  return table({ id: "runs", caption: "Cords in the order of each run", columns, rows });
}
