import type { Field, JsonSchema } from "./field.js";
import type { FileSpot } from "./file-spot.js";

/** How long a list may be. */
export interface ListCounts {
  readonly leastCount?: number;
  readonly mostCount: number;
}

/** A list that is read whole or not at all. */
export function list<T>(description: string, item: Field<T>, counts: ListCounts): Field<readonly T[]> {
  return {
    schema: listSchema(description, item, counts),
    read: (raw, spot) => {
      const items = itemsOf(raw, spot, description, counts);
      const values = items?.map((each, index) => item.read(each, spot.item(index)));
      return values?.every((value) => value !== undefined) === true ? values : undefined;
    },
  };
}

/** One item of a list and the spot where it stands. */
export interface Entry<T> {
  readonly value: T;
  readonly spot: FileSpot;
}

/** A list whose sound items are read although others are not: those are told of. */
export function entries<T>(
  description: string,
  item: Field<T>,
  counts: ListCounts,
): Field<readonly Entry<T>[]> {
  return {
    schema: listSchema(description, item, counts),
    read: (raw, spot) =>
      itemsOf(raw, spot, description, counts)?.flatMap((each, index) => {
        const at = spot.item(index);
        const value = item.read(each, at);
        return value === undefined ? [] : [{ value, spot: at }];
      }),
  };
}

function itemsOf(
  raw: unknown,
  spot: FileSpot,
  description: string,
  { leastCount = 0, mostCount }: ListCounts,
): readonly unknown[] | undefined {
  if (Array.isArray(raw) && raw.length >= leastCount && raw.length <= mostCount)
    return raw as readonly unknown[];
  return spot.error(raw, `${description}: a list of ${leastCount} to ${mostCount}`);
}

function listSchema<T>(
  description: string,
  item: Field<T>,
  { leastCount = 0, mostCount }: ListCounts,
): JsonSchema {
  return { description, type: "array", items: item.schema, minItems: leastCount, maxItems: mostCount };
}
