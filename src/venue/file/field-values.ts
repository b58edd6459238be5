import type { Field } from "./field.js";
import { nearHint } from "./near-hint.js";

const MOST_LETTERS = 200;
const PLAIN = "^(?=[\\s\\S]*\\S)[^\\u0000-\\u001f\\u007f-\\u009f]*$";
const IS_PLAIN = new RegExp(PLAIN, "u");

/** A name or other short text; a bare number counts as its digits. */
export function text(description: string): Field<string> {
  return {
    schema: { description, type: ["string", "number"], maxLength: MOST_LETTERS, pattern: PLAIN },
    read: (raw, spot) => {
      const words = typeof raw === "number" ? String(raw) : raw;
      if (typeof words === "string" && words.length <= MOST_LETTERS && IS_PLAIN.test(words))
        return words.trim();
      return spot.error(raw, `${description}: 1 to ${MOST_LETTERS} characters on one line`);
    },
  };
}

/** A text that strangers or the crew chose, such as a network's name: any characters. */
export function foreignText(description: string, mostLetterCount = MOST_LETTERS): Field<string> {
  return {
    schema: { description, type: ["string", "number"], minLength: 1, maxLength: mostLetterCount },
    read: (raw, spot) => {
      const words = typeof raw === "number" ? String(raw) : raw;
      if (typeof words === "string" && words !== "" && words.length <= mostLetterCount) return words;
      return spot.error(raw, `${description}: 1 to ${mostLetterCount} characters`);
    },
  };
}

/** Lowest and highest believable value, both included. */
export type Bounds = readonly [low: number, high: number];

/** A number with its unit in the key. */
export function figure(description: string, [low, high]: Bounds): Field<number> {
  return {
    schema: { description, type: "number", minimum: low, maximum: high },
    read: (raw, spot) => {
      if (typeof raw === "number" && raw >= low && raw <= high) return raw;
      return spot.error(raw, `${description}: a number from ${low} to ${high}`);
    },
  };
}

/** A whole number. */
export function whole(description: string, [low, high]: Bounds): Field<number> {
  return {
    schema: { description, type: "integer", minimum: low, maximum: high },
    read: (raw, spot) => {
      if (typeof raw === "number" && Number.isInteger(raw) && raw >= low && raw <= high) return raw;
      return spot.error(raw, `${description}: a whole number from ${low} to ${high}`);
    },
  };
}

/** One word of a list. */
export function word<const Word extends string>(description: string, words: readonly Word[]): Field<Word> {
  return {
    schema: { description, enum: words },
    read: (raw, spot) => {
      const found = words.find((known) => known === raw);
      if (found !== undefined) return found;
      return spot.error(raw, `${description}: one of ${words.join(", ")}${nearHint(raw, words)}`);
    },
  };
}

/** True or false. */
export function flag(description: string): Field<boolean> {
  return {
    schema: { description, type: "boolean" },
    read: (raw, spot) => (typeof raw === "boolean" ? raw : spot.error(raw, `${description}: true or false`)),
  };
}

/** A calendar day in ISO 8601. */
export function day(description: string): Field<string> {
  return {
    schema: { description, type: "string", pattern: "^\\d{4}-\\d{2}-\\d{2}$" },
    read: (raw, spot) => {
      if (typeof raw === "string" && isDay(raw)) return raw;
      return spot.error(raw, `${description}: a day as 2026-03-07`);
    },
  };
}

function isDay(words: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(words);
  if (match === null) return false;
  const [year, month, date] = match.slice(1).map(Number) as [number, number, number];
  const then = new Date(Date.UTC(year, month - 1, date));
  return then.getUTCMonth() === month - 1 && then.getUTCDate() === date && year > 0;
}
