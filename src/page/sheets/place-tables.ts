import { antennaInBrief, letteredPlaces, placeAssumptions, placeName } from "../../report/index.js";
import type { PlaceReport } from "../../report/index.js";
import { list, markup } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { columnsOf, table } from "../html/table.js";
import { marked } from "../html/verdict.js";
import type { PageParts } from "../page-parts.js";

/** Where each system's transmitter could go, best first. */
export function placeTables(parts: PageParts): Content {
  const { place } = parts.report;
  return [
    ...place.systems.map((system, index) => systemTable(system, index, parts)),
    markup`<details><summary>What places are compared by</summary>\n${list(placeAssumptions(place, parts.figures.units))}</details>\n`,
  ];
}

function systemTable(
  { name, placed, reason }: PlaceReport["systems"][number],
  index: number,
  { figures }: PageParts,
): Content {
  if (placed === null) return markup`<p>System ${name}: ${reason ?? "not placed"}.</p>\n`;
  const rows = letteredPlaces(placed).map(({ letter, one }, row) => {
    const at = `/place/systems/${String(index)}/places/${String(row)}`;
    return [
      letter,
      placeName(one),
      one.place.room,
      ...["xM", "yM", "heightM"].map((key) => figures.length("distance", `${at}/${key}`)),
      antennaInBrief(one.place.antenna),
      marked(one.leastMarginDb, figures.figure("dB", `${at}/workingMarginDb`, { none: "no signal" })),
      figures.figure("dB", `${at}/givesUpDb`),
      one.weakest,
    ];
  });
  const heads = ["", "place", "room", "-x", "-y", "-up", "antenna", "-to spare", "-gives up", "weakest"];
  return table({
    id: `places-${String(index)}`,
    caption: `System ${name}: places, dB to spare at the weakest receiver; T is the planned one`,
    columns: columnsOf("letter", ...heads.slice(1)),
    rows,
  });
}
