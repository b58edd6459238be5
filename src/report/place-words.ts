import { printable } from "../issues/index.js";
import { mToFeet } from "../units/index.js";
import type { Antenna } from "../propagation/index.js";
import type { PlannedPlace, TransmitterPlace } from "../venue/index.js";
import { fixed } from "./number-format.js";
import type { LengthUnit } from "./pen.js";
import { clipped } from "./text-layout.js";
import { verdictMark, verdictWord } from "./verdict-mark.js";

/** Verdict's mark, word and dB in whole ones, never flattered. @example spareWords(7.9); // => "o sound, 7 dB to spare" */
export function spareWords(workingMarginDb: number): string {
  const verdict = `${verdictMark(workingMarginDb)} ${verdictWord(workingMarginDb)}`;
  if (workingMarginDb === -Infinity) return `${verdict}, no signal: in an antenna's null`;
  if (verdictWord(workingMarginDb) === "fails")
    return `${verdict} by ${fixed(Math.ceil(-workingMarginDb - 1e-9), 0)} dB`;
  return `${verdict}, ${fixed(Math.floor(workingMarginDb + 1e-9), 0)} dB to spare`;
}

/** A length on the plan, to a tenth. */
export function planLength(lengthM: number, unit: LengthUnit): string {
  return fixed(unit === "ft" ? mToFeet(lengthM) : lengthM, 1);
}

/** `18.8, 11.3 m, 3.0 m up`. */
export function whereOnPlan({ at, heightM }: TransmitterPlace, unit: LengthUnit): string {
  const [x, y, up] = [at.x, at.y, heightM].map((lengthM) => planLength(lengthM, unit));
  return `${x}, ${y} ${unit}, ${up} ${unit} up`;
}

/** What a place is called: its own name, or that it is a point of the grid. */
export function placeName({ from, place }: Pick<PlannedPlace, "from" | "place">): string {
  return from === "grid" ? "grid point" : clipped(printable(place.name, 60), 28);
}

/** A point of the grid with where it is; a named place by its name. */
export function placeWords(one: Pick<PlannedPlace, "from" | "place">, unit: LengthUnit): string {
  return one.from === "grid" ? `${placeName(one)} at ${whereOnPlan(one.place, unit)}` : placeName(one);
}

/** In a few words; the profile's gain in every direction where there is no pattern. */
export function antennaInBrief(antenna: Antenna | null): string {
  if (antenna === null) return "the profile's gain";
  const gain = "gainDbi" in antenna ? ` ${fixed(antenna.gainDbi, 1).replace(/\.0$/, "")} dBi` : "";
  const azimuth =
    antenna.kind === "panel" && antenna.azimuthDeg !== undefined ? ` at ${antenna.azimuthDeg}°` : "";
  return `${antenna.kind}${gain}${azimuth}`;
}

/** Letters for places on a plan, none that a plan has another use for. */
export function placeLetter(index: number): string {
  return LETTERS[index] ?? "+";
}

/** A transmitter is T, the two of a pair are P and Q. */
const LETTERS = "ABCDEFGHIJKLMNORSUVWXYZ";
