import { printable } from "../issues/index.js";
import { findProfile, nearestWord, readProfile } from "../radio/index.js";
import { CliError, EXIT } from "./exit.js";
import { camelCase, figureNames, figuresOf, snakeCase } from "./radio-figures.js";
import { badOption, plainNumber } from "./words.js";

/** Figures as typed: name of the figure → its value. */
export type Figures = Readonly<Record<string, string | number | null>>;

/**
 * The figures that `--enclosure WORD` and `--set FIGURE=VALUE` give; of one given twice the last holds.
 * @throws {CliError} exit 64 for an unknown figure, with the nearest known, or a value that it can't have
 */
export function figureWords(set: readonly string[], enclosure: string | undefined): Figures {
  const figures: Record<string, string | number | null> = {};
  if (enclosure !== undefined) {
    const fault = faultOf("enclosure", enclosure);
    if (fault !== null) throw badOption("--enclosure", fault, enclosure, "slotted-metal");
    figures["enclosure"] = enclosure;
  }
  for (const word of set) {
    const [name, value] = figureWord(word);
    figures[name] = value;
  }
  return figures;
}

function figureWord(word: string): readonly [name: string, value: string | number | null] {
  const [, typed, text] = /^([A-Za-z][A-Za-z0-9_]*)=(.*)$/s.exec(word) ?? [];
  if (typed === undefined || text === undefined)
    throw badOption("--set", "FIGURE=VALUE", word, `${snakeCase(PLAIN)}=10`);
  const name = camelCase(typed);
  if (!figureNames.includes(name)) throw unknownFigure(typed, text);
  const value = valueOf(text);
  const fault = faultOf(name, value);
  if (fault === null) return [name, value];
  const example = exampleOf(name);
  if (example === null) throw new CliError(EXIT.usage, `--set: ${typed} is a shape, no single value`, SHAPES);
  throw badOption("--set", `${typed} to be ${fault}`, text, `${typed}=${example}`);
}

function unknownFigure(typed: string, text: string): CliError {
  const near = nearestWord(typed, figureNames);
  const hint = near === null ? "" : ` such as ${snakeCase(near)}`;
  const example = near === null ? `${snakeCase(PLAIN)}=10` : `${snakeCase(near)}=${printable(text, 60)}`;
  return badOption("--set", `a figure of the profile${hint} (stillband profiles raster-13)`, typed, example);
}

function valueOf(text: string): string | number | null {
  const value = plainNumber(text);
  if (!Number.isNaN(value)) return value;
  return text === "null" ? null : text.trim();
}

/** @returns what was expected of a figure that can't have this value; null where it can */
function faultOf(name: string, value: string | number | null): string | null {
  const { profile, issues } = readProfile({ basedOn: EXAMPLE, [name]: value }, "--set");
  return profile === null ? (issues[0]?.expected ?? "another value") : null;
}

const EXAMPLE = "raster-13";
const PLAIN = "txPowerDbm";
const SHAPES = "give it in a profile file: stillband profiles raster-13 --json > mine.json";

/** A value that the figure may have, as a word; null for a shape. */
function exampleOf(name: string): string | null {
  const value: unknown = figuresOf(findProfile(EXAMPLE)).find(([known]) => known === name)?.[1].value;
  if (value === null) return "null";
  return typeof value === "number" || typeof value === "string" ? String(value) : null;
}
