import { mToFeet } from "../units/index.js";
import { dB, fixed } from "./number-format.js";
import type { LengthUnit } from "./pen.js";

/** A length in the reader's unit. @example lengthText(20, "m"); // => "20.0 m" */
export function lengthText(lengthM: number, unit: LengthUnit): string {
  return unit === "ft" ? `${fixed(mToFeet(lengthM), 1)} ft` : `${fixed(lengthM, 1)} m`;
}

/** A level; none in an antenna's null. @example dBm(-60); // => "-60.0 dBm" */
export function dBm(levelDbm: number): string {
  return levelDbm === -Infinity ? "none" : `${fixed(levelDbm, 1)} dBm`;
}

/** A gain; none in an antenna's null. @example dBi(2.15); // => "2.1 dBi" */
export function dBi(gainDbi: number): string {
  return gainDbi === -Infinity ? "none" : `${fixed(gainDbi, 1)} dBi`;
}

/** A loss as it enters the sum. @example minus(10); // => "-10.0 dB" */
export function minus(lossDb: number): string {
  return dB(lossDb === 0 ? 0 : -lossDb);
}
