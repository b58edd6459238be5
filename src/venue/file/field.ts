import type { FileSpot } from "./file-spot.js";

/** A JSON Schema (draft 2020-12) or a part of one. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** One kind of value in a file: its schema for editors, and its reader. Both come from the same words. */
export interface Field<T> {
  readonly schema: JsonSchema;
  /** @returns undefined when the spot was told what is wrong */
  readonly read: (raw: unknown, spot: FileSpot) => T | undefined;
}

/** What a field reads. */
export type ValueOf<F> = F extends Field<infer T> ? T : never;

/** The same field, its value held to a further rule; the rule tells the spot and returns undefined. */
export function refined<T, U>(
  field: Field<T>,
  rule: (value: T, spot: FileSpot) => U | undefined,
  schema: JsonSchema = {},
): Field<U> {
  return {
    schema: { ...field.schema, ...schema },
    read: (raw, spot) => {
      const value = field.read(raw, spot);
      return value === undefined ? undefined : rule(value, spot);
    },
  };
}
