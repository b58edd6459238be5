import { printable } from "../issues/index.js";
import { feetToM } from "../units/index.js";
import type { FadeLaw } from "../propagation/index.js";
import type { LengthUnit } from "../report/index.js";
import { CliError, EXIT } from "./exit.js";

/** @returns a usage error that names the option, what was expected and what stood there */
export function badOption(flag: string, expected: string, received: string, example: string): CliError {
  const got = printable(received, 60);
  return new CliError(EXIT.usage, `${flag}: expected ${expected}, got "${got}"`, `${flag} ${example}`);
}

/** What a number may be, and one that a working integrator could use. */
export interface NumberSpec {
  readonly lowest: number;
  readonly highest: number;
  readonly expected: string;
  readonly example: string;
}

/** A number in a range. */
export function numberWord(flag: string, text: string, spec: NumberSpec): number {
  const value = plainNumber(text);
  if (!(value >= spec.lowest && value <= spec.highest))
    throw badOption(flag, spec.expected, text, spec.example);
  return value;
}

/** @returns the number that a word is, NaN for anything else, blank included */
export function plainNumber(text: string): number {
  return NUMBER.test(text.trim()) ? Number(text) : NaN;
}

/** A word that isn't blank. */
export function filledWord(flag: string, text: string, expected: string, example: string): string {
  if (text.trim() === "") throw badOption(flag, expected, text, example);
  return text;
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const LENGTH = /^(\d+\.?\d*|\.\d+)\s*(m|ft|')?$/i;

/** A length such as `20`, `20m` or `65ft`, in m; a bare number is in the unit of the command. */
export function lengthWord(flag: string, text: string, unit: LengthUnit): number {
  const match = LENGTH.exec(text.trim());
  const lengthM =
    match === null ? NaN : inM(Number(match[1]), match[2] === undefined ? unit : match[2].toLowerCase());
  if (!(lengthM > 0 && lengthM <= 100_000))
    throw badOption(flag, "a length > 0 such as 20m or 65ft", text, "20m");
  return lengthM;
}

function inM(value: number, unit: string): number {
  return unit === "m" ? value : feetToM(value);
}

/** Lengths separated by commas. */
export function lengthsWord(flag: string, text: string, unit: LengthUnit): number[] {
  return text.split(",").map((word) => lengthWord(flag, word, unit));
}

/** `rayleigh`, `rician:K`, `lognormal:SIGMA` or `rayleigh-lognormal:SIGMA`, in dB. */
export function fadeLawWord(flag: string, text: string): FadeLaw {
  const [law, figure, ...rest] = text.split(":");
  const value = plainNumber(figure ?? "");
  if (law === "rayleigh" && figure === undefined) return { law };
  if (law === "rician" && rest.length === 0 && value >= -20 && value <= 40) return { law, kDb: value };
  if ((law === "lognormal" || law === "rayleigh-lognormal") && rest.length === 0 && value > 0 && value <= 30)
    return { law, sigmaDb: value };
  throw badOption(
    flag,
    "rayleigh, rician:K_DB, lognormal:SIGMA_DB or rayleigh-lognormal:SIGMA_DB",
    text,
    "rician:6",
  );
}
