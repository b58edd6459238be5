import { printable } from "../issues/index.js";
import { lacksHardware } from "./hang-flag-lines.js";
import type { HangFlag } from "../install/index.js";
import { fewNames, shortWords, wholeOrderWords } from "./hang-words.js";
import type { CrewSheet, HangReport } from "./hang-report.js";
import { glanceLine } from "./link-lines.js";
import { countOf } from "./patch-words.js";
import type { LengthUnit } from "./pen.js";
import { columnsOf } from "./text-layout.js";

/** Columns that a line of the opening block leaves for its words. */
const ROOM = 70;
const ALL: readonly CrewSheet[] = ["hang", "circuits", "order", "checks", "trouble"];

/** The crew's sheets in at most eight lines of at most 80 columns; what may not be hung comes first. */
export function hangGlance(report: HangReport, units: LengthUnit): string[] {
  const lines: (readonly [label: string, words: string, sheets: readonly CrewSheet[]])[] = [
    ...stopLines(report).map((words) => ["STOP", words, ALL] as const),
    ["Venue", venueWords(report), ALL],
    ["Hang", hangWords(report, units), ["hang"]],
    ["Circuits", circuitWords(report), ["circuits"]],
    ["Order", orderLine(report, units), ["order"]],
    ["Radio", radioWords(report), ["checks", "trouble"]],
    ["Emergency", emergencyWords(report), ALL],
    ["Do", doWords(report), ["hang", "circuits", "checks"]],
  ];
  const shown = lines.filter(([, , sheets]) => report.sheets.some((sheet) => sheets.includes(sheet)));
  // Where all sheets are shown, their own lines say it; eight hold no more.
  const told = shown.length > MOST_LINES ? shown.filter(([label]) => label !== "Radio") : shown;
  return told.slice(0, MOST_LINES).map(([label, words]) => glanceLine(label, words));
}

const MOST_LINES = 8;

/** What stays on the ground: first whose rating nobody gave, then all other reasons in one line. */
function stopLines({ plan }: HangReport): string[] {
  const { rows } = plan.hang;
  const having = (flag: HangFlag): string[] =>
    rows.filter(({ flags }) => flags.includes(flag)).map(({ name }) => name);
  const unrated = having("rating-not-given");
  const others: readonly (readonly [string, readonly string[]])[] = [
    ["beyond its rating", having("beyond-rating")],
    ["weight not given", having("weight-not-given")],
    ["too heavy for a box", having("beyond-box-limit")],
  ];
  const reasons = others.filter(([, names]) => names.length > 0);
  const first = "RATING NOT GIVEN: DO NOT HANG ";
  const names = reasons.flatMap(([, own]) => own.filter((name) => !unrated.includes(name)));
  const why = reasons.map(([words]) => words).join(", ");
  return [
    ...(unrated.length === 0 ? [] : [first + fewNames(unrated, ROOM - first.length)]),
    ...(names.length === 0
      ? []
      : [`DO NOT HANG ${fewNames([...new Set(names)], ROOM - 14 - why.length)}: ${why}`]),
  ];
}

function fitting(...variants: readonly string[]): string {
  return variants.find((words) => columnsOf(words) <= ROOM) ?? variants.at(-1)!;
}

function venueWords({ venueName, plan, room, system }: HangReport): string {
  const counts = `${countOf(plan.hang.rows.length, "luminaire")}, ${countOf(plan.circuits.rows.length, "circuit")}`;
  const part = [
    ...(room === null ? [] : [`room ${printable(room, 20)}`]),
    ...(system === null ? [] : [`system ${printable(system, 20)}`]),
  ];
  const only = part.length === 0 ? "" : `, ${part.join(", ")} alone`;
  return fitting(
    `${printable(venueName, 40)}${only}: ${counts}`,
    `${printable(venueName, 20)}${only}: ${counts}`,
    counts,
  );
}

function hangWords({ plan }: HangReport, units: LengthUnit): string {
  const { rows, levels } = plan.hang;
  const cut = rows.filter(({ gap }) => gap === null);
  const open = rows.length - cut.length;
  const missing = open === 0 ? "" : `; ${open} WITHOUT a length`;
  if (cut.length === 0) return "no length can be worked out yet";
  const errorsM = cut.map(({ trimErrorM }) => trimErrorM ?? 0);
  const [lowM, highM] = [Math.min(...errorsM), Math.max(...errorsM)];
  const off =
    lowM < 0
      ? `${shortWords(-lowM, units)} below to ${shortWords(highM, units)} above trim`
      : highM === 0
        ? "all at trim"
        : `at trim to ${shortWords(highM, units)} above it`;
  const uneven = levels.flatMap((level) => level.uneven);
  const isOpen = cut.some(lacksHardware);
  const even = isOpen
    ? "HARDWARE NOT COUNTED"
    : uneven.length === 0
      ? "rows level to the eye"
      : `${uneven.length} UNEVEN to the eye`;
  return fitting(`${countOf(cut.length, "length")}, ${off}; ${even}${missing}`, `${off}; ${even}${missing}`);
}

function circuitWords({ plan }: HangReport): string {
  const { rows } = plan.circuits;
  const on = (flag: (typeof rows)[number]["flags"][number]): string[] =>
    rows.filter(({ flags }) => flags.includes(flag)).map(({ circuit }) => circuit);
  const kinds: readonly (readonly [words: string, circuits: readonly string[]])[] = [
    ["DIMMER OUT", on("dimmer")],
    ["BEYOND BREAKER", on("beyond-breaker")],
    ["TOO MANY DRIVERS", on("beyond-drivers")],
    ["NO EARTH", on("no-earth")],
    ["no breaker given", on("ask-breaker")],
    ["switch or clock out", [...on("wall-switch"), ...on("sensor"), ...on("time-clock")]],
    ["trace control", on("control-unknown")],
  ];
  const told = kinds.filter(([, circuits]) => circuits.length > 0);
  if (told.length === 0) return `${countOf(rows.length, "circuit")} within the breakers typed in`;
  const long = told.map(([words, circuits]) => `${words} ${fewNames(circuits, 24)}`).join("; ");
  return fitting(long, told.map(([words, circuits]) => `${words} ${circuits.length}`).join("; "));
}

function orderLine({ plan }: HangReport, units: LengthUnit): string {
  const { lines, gaps } = plan.order;
  const receivers = lines.find(({ item }) => item === "receiver");
  const lengthOf = (item: string): number =>
    lines.reduce(
      (sumM, line) => sumM + (line.kind === "lengths" && line.item === item ? line.order.orderM : 0),
      0,
    );
  const parts = [
    ...(receivers?.kind === "pieces" ? [`${countOf(receivers.orderCount, "receiver")} with spares`] : []),
    ...(["chain", "cord"] as const)
      .filter((item) => lengthOf(item) > 0)
      .map((item) => `${item} ${wholeOrderWords(lengthOf(item), units)}`),
  ];
  const open = new Set(gaps.map(({ name }) => name)).size;
  const left = open === 0 ? "nothing left open" : `OPEN for ${countOf(open, "luminaire")}`;
  return fitting(
    `${parts.join(", ")}; ${left}`,
    `${parts.join(", ").replace(" with spares", "")}; ${left}`,
    left,
  );
}

function radioWords({ plan }: HangReport): string {
  const fixed = plan.terms.systems.filter(({ hops }) => hops !== true);
  const open = fixed.filter(({ channel, fallback }) => channel === null || fallback === null);
  if (fixed.length === 0) return "the radio hops: no radio channel to set";
  if (open.length === 0) return "planned radio channel and fallback stand on every label";
  return fitting(
    `radio channel or fallback open for ${fewNames(
      open.map(({ name }) => name),
      34,
    )}`,
    `radio channel or fallback open for ${countOf(open.length, "system")}`,
  );
}

function emergencyWords({ plan }: HangReport): string {
  const { names, unknownNames } = plan.hang.emergency;
  const counted = names.length === 0 ? "" : `; ${names.length === 1 ? "1 COUNTS" : `${names.length} COUNT`}`;
  if (unknownNames.length > 0)
    return `NOT KNOWN for ${fewNames(unknownNames, 26)}: ask before ${unknownNames.length === 1 ? "it hangs" : "they hang"}${counted}`;
  if (names.length === 0) return "no luminaire counts as emergency or exit lighting";
  return `must not depend on the radio link: ${fewNames(names, 34)}`;
}

function doWords({ plan }: HangReport): string {
  const { hang, circuits, order } = plan;
  const controlled = circuits.rows.some(({ control }) => control !== "none");
  const steps = [
    ...(hang.doNotHang.length === 0 ? [] : ["settle ratings and weights"]),
    ...(controlled ? ["controls out of the circuits"] : []),
    ...(hang.rows.some(({ gap }) => gap !== null) ? ["measure what is open"] : []),
    ...(order.gaps.length === 0 ? [] : ["order what is whole"]),
    "link on the ground",
  ];
  const numbered = steps.map((step, index) => `${index + 1} ${step}`);
  return fitting(numbered.join("; "), numbered.slice(0, 3).join("; "), numbered.slice(0, 2).join("; "));
}
