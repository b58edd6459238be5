import type { HangFlag, HangRow } from "../install/index.js";
import { GAP_WORDS, lengthWords, PART_WORDS, weightWords } from "./hang-words.js";
import type { HangReport } from "./hang-report.js";
import { nameOf } from "./patch-words.js";
import type { LengthUnit } from "./pen.js";

/** What stands in the way before anything is lifted, the gravest first, a statement each. */
export function hangFlagLines({ plan, hangFlagWords }: HangReport, units: LengthUnit): string[] {
  const { rows } = plan.hang;
  const flags = Object.keys(hangFlagWords) as HangFlag[];
  const told = flags.filter((flag) => !OF_EMERGENCY.includes(flag));
  return [
    ...told.flatMap((flag) => {
      const having = rows.filter((row) => row.flags.includes(flag));
      if (having.length === 0) return [];
      return `${hangFlagWords[flag]}. ${having.map((row) => withDetail(row, flag, units)).join("; ")}.`;
    }),
    ...hardwareLines(rows),
    ...gapLines(rows),
    ...safetyLines(rows),
  ];
}

/** Told in their own section of every sheet. */
const OF_EMERGENCY: readonly HangFlag[] = ["emergency", "emergency-unknown"];

function withDetail(row: HangRow, flag: HangFlag, units: LengthUnit): string {
  const { name, load, unevenM, trimErrorM } = row;
  const detail = detailOf();
  return detail === "" ? nameOf(name) : `${nameOf(name)} (${detail})`;

  function detailOf(): string {
    const parts = (verdict: string): string[] =>
      load.checks
        .filter((check) => check.verdict === verdict && check.part !== "safety")
        .map(({ part }) => PART_WORDS[part]);
    if (flag === "rating-not-given") return parts("rating-not-given").join(", ");
    if (flag === "beyond-rating") {
      const beyond = load.checks.filter(({ verdict }) => verdict === "beyond");
      const rated = beyond.map(
        ({ part, ratedKg }) => `${PART_WORDS[part]} ${weightWords(ratedKg ?? 0, units)}`,
      );
      return `weighs ${weightWords(load.knownKg, units)}; ${rated.join(", ")}`;
    }
    if (flag === "weight-not-given") return load.missing.map((part) => MISSING_WORDS[part]).join(", ");
    if (flag === "beyond-box-limit") return weightWords(load.knownKg, units);
    if (flag === "uneven" && unevenM !== null)
      return `${lengthWords(Math.abs(unevenM), units)} ${unevenM > 0 ? "high" : "low"}`;
    if (flag === "below-trim" && trimErrorM !== null) return lengthWords(-trimErrorM, units);
    return "";
  }
}

const MISSING_WORDS: Readonly<Record<HangRow["load"]["missing"][number], string>> = {
  luminaire: "luminaire",
  suspension: "suspension_weight",
  cord: "cord_weight",
  receiver: "receiver_weight",
};

/** Heights of the hardware; a missing one is counted as nothing. */
const HARDWARE_HEIGHTS: readonly HangRow["assumed"][number][] = [
  "canopyM",
  "topHookM",
  "bottomHookM",
  "eyeBoltM",
];

/** Does a luminaire hang lower than its sheet says, by hardware whose height nobody gave? */
export function lacksHardware({ assumed }: HangRow): boolean {
  return HARDWARE_HEIGHTS.some((key) => assumed.includes(key));
}

function hardwareLines(rows: readonly HangRow[]): string[] {
  const named = (lacking: readonly HangRow[]): string =>
    lacking.length === rows.length ? "every luminaire" : lacking.map(({ name }) => nameOf(name)).join(", ");
  const low = rows.filter(lacksHardware);
  const light = rows.filter(({ assumed }) => assumed.includes("hardwareKg"));
  return [
    ...(low.length === 0
      ? []
      : [
          `HARDWARE HEIGHT NOT GIVEN (canopy, hooks or eye bolt), so not counted: it hangs lower than told by that height. Measure it before the chain is cut: ${named(low)}.`,
        ]),
    ...(light.length === 0
      ? []
      : [`HARDWARE WEIGHT NOT GIVEN, so not counted: add hooks, canopy and eye bolt. ${named(light)}.`]),
  ];
}

function gapLines(rows: readonly HangRow[]): string[] {
  const gaps = [...new Set(rows.flatMap(({ gap }) => gap ?? []))];
  return gaps.map((gap) => {
    const names = rows.filter((row) => row.gap === gap).map(({ name }) => nameOf(name));
    return `No length for ${names.join(", ")}: ${GAP_WORDS[gap]}.`;
  });
}

function safetyLines(rows: readonly HangRow[]): string[] {
  const open = rows.filter(({ load }) =>
    load.checks.some(({ part, verdict }) => part === "safety" && verdict === "rating-not-given"),
  );
  if (open.length === 0) return [];
  return [
    `Safety cable's rating not given: ask before it goes up. ${open.map(({ name }) => nameOf(name)).join(", ")}.`,
  ];
}
