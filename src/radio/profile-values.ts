import type { Shape, ShapePoint } from "../band/index.js";
import { requireShape } from "../band/index.js";
import { ArgumentError } from "../issues/index.js";
import { hint, joined, knownEntries } from "./profile-keys.js";
import type { Report } from "./profile-report.js";
import { isMapping } from "./profile-report.js";
import { stepShape } from "./step-shape.js";

/** Reads one raw value; undefined when it was reported. */
export type ValueReader<T> = (raw: unknown, path: string, report: Report) => T | undefined;

/** Lowest and highest believable value, both included. */
export type Range = readonly [low: number, high: number];

/** @returns a reader of numbers from `low` to `high` */
export function numberFrom([low, high]: Range, words: string): ValueReader<number> {
  return (raw, path, report) => {
    if (typeof raw === "number" && raw >= low && raw <= high) return raw;
    report(path, raw, `${words} from ${low} to ${high}${unquoted(raw)}`);
    return undefined;
  };
}

/** @returns a reader of whole numbers from `low` to `high` */
export function wholeFrom([low, high]: Range, words: string): ValueReader<number> {
  return (raw, path, report) => {
    if (typeof raw === "number" && Number.isInteger(raw) && raw >= low && raw <= high) return raw;
    report(path, raw, `${words}, a whole number from ${low} to ${high}${unquoted(raw)}`);
    return undefined;
  };
}

/** A number in quotes reads like the right one: what is wrong with it. */
function unquoted(raw: unknown): string {
  return typeof raw === "string" && raw.trim() !== "" && Number.isFinite(Number(raw))
    ? " without quotes"
    : "";
}

/** @returns a reader of one word of a list */
export function wordOf<Word extends string>(words: readonly Word[]): ValueReader<Word> {
  return (raw, path, report) => {
    const found = words.find((word) => word === raw);
    const near = typeof raw === "string" ? hint(raw, words) : "";
    if (found === undefined) report(path, raw, `one of ${words.join(", ")}${near}`);
    return found;
  };
}

/** @returns a reader that lets null pass, for what isn't known */
export function orNull<T>(read: ValueReader<T>): ValueReader<T | null> {
  return (raw, path, report) => (raw === null ? null : read(raw, path, report));
}

/** Not empty, at most 200 characters. */
export const readText: ValueReader<string> = (raw, path, report) => {
  if (typeof raw === "string" && raw.trim() !== "" && raw.length <= 200) return raw;
  report(path, raw, "a text of 1 to 200 characters");
  return undefined;
};

const SHAPE_WORDS =
  "points: [[offset MHz, dB], …] in rising order, or steps: [[half width MHz, dB], …] from the centre outwards";

/** `{ points }`, or `{ steps }` for a symmetric staircase. */
export const readShape: ValueReader<Shape> = (raw, path, report) => {
  if (!isMapping(raw)) {
    report(path, raw, SHAPE_WORDS);
    return undefined;
  }
  const entries = knownEntries(raw, ["points", "steps"], path, report);
  const [[form, list] = ["", undefined]] = entries;
  if (entries.size !== 1) {
    report(path, raw, SHAPE_WORDS);
    return undefined;
  }
  if (!isPairs(list)) {
    report(joined(path, form), list, `a list of 1 to 1000 pairs of numbers: ${SHAPE_WORDS}`);
    return undefined;
  }
  try {
    return form === "steps" ? stepShape(list) : requireShape(form, { points: list });
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    report(joined(path, form), list, error.expected);
    return undefined;
  }
};

function isPairs(raw: unknown): raw is readonly ShapePoint[] {
  if (!Array.isArray(raw) || raw.length < 1 || raw.length > 1000) return false;
  return raw.every(
    (pair: unknown) =>
      Array.isArray(pair) && pair.length === 2 && pair.every((cell: unknown) => Number.isFinite(cell)),
  );
}
