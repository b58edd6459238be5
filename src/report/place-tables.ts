import { printable } from "../issues/index.js";
import type { PlannedPlace } from "../venue/index.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import type { SystemPlacement } from "./place-report.js";
import { breakWords } from "./place-breaks.js";
import { antennaInBrief, placeLetter, placeName, planLength } from "./place-words.js";
import { bullets } from "./section.js";
import { clipped, tableLines } from "./text-layout.js";
import { verdictMark } from "./verdict-mark.js";

/** A place with the letter that it has in the table and on the plan. */
export interface LetteredPlace {
  readonly letter: string;
  readonly one: PlannedPlace;
}

/** The places of a plan, best first, with their letters: T is the transmitter of the venue file. */
export function letteredPlaces({ plan }: SystemPlacement): LetteredPlace[] {
  let count = 0;
  return plan.places.map((one) => ({
    letter: one.from === "planned" ? "T" : placeLetter(count++),
    one,
  }));
}

/** Every place that was judged: what is left at the weakest receiver, and what it gives up beside the best. */
export function placesTable(placed: SystemPlacement, style: TextStyle): string[] {
  const lettered = letteredPlaces(placed);
  if (lettered.length === 0) return ["No place is left by the keep-outs."];
  const { units } = style;
  const rows = lettered.map(({ letter, one }) => [
    letter,
    clipped(placeName(one), 24),
    ...[one.place.at.x, one.place.at.y, one.place.heightM].map((lengthM) => planLength(lengthM, units)),
    `${verdictMark(one.leastMarginDb)} ${fixed(one.leastMarginDb, 1)}`,
    fixed(one.givesUpDb, 1),
    clipped(printable(one.weakest, 30), 14),
    `${one.margins.filter(({ inSight }) => inSight).length}/${one.margins.length}`,
  ]);
  return [
    ...tableLines(
      [
        { head: "", align: "left" },
        { head: "place", align: "left" },
        { head: `x ${units}`, align: "right" },
        { head: `y ${units}`, align: "right" },
        { head: "up", align: "right" },
        { head: "spare dB", align: "right" },
        { head: "gives up", align: "right" },
        { head: "weakest", align: "left" },
        { head: "sees", align: "right" },
      ],
      rows,
      style.columnCount,
    ),
    ...bullets([antennaLine(lettered), ...brokenLines(lettered, style)], style),
  ];
}

/** Which places have which antenna. */
function antennaLine(lettered: readonly LetteredPlace[]): string {
  const letters = new Map<string, string[]>();
  for (const { letter, one } of lettered) {
    const antenna = antennaInBrief(one.place.antenna);
    letters.set(antenna, [...(letters.get(antenna) ?? []), letter]);
  }
  return `Antennas: ${[...letters].map(([antenna, each]) => `${each.join(", ")} ${antenna}`).join("; ")}.`;
}

function brokenLines(lettered: readonly LetteredPlace[], { units }: TextStyle): string[] {
  return lettered.flatMap(({ letter, one }) => {
    const broken = breakWords(one.breaks, units);
    return broken === null ? [] : [`${letter} ${placeName(one)} breaks the antenna practice: ${broken}.`];
  });
}
