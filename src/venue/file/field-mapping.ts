import type { Field, JsonSchema, ValueOf } from "./field.js";
import type { FileSpot } from "./file-spot.js";
import { isMapping } from "./file-spot.js";
import { nearHint } from "./near-hint.js";

/** Keys of a mapping and what stands behind each. */
export type Fields = Readonly<Record<string, Field<unknown>>>;

/** What a mapping reads: an optional key that is left out or blank is null. */
export type MappingValue<Needed extends Fields, Further extends Fields> = {
  readonly [Key in keyof Needed]: ValueOf<Needed[Key]>;
} & { readonly [Key in keyof Further]: ValueOf<Further[Key]> | null };

/** The same where keys may have been wrong: undefined, and told of. */
export type MappingParts<Needed extends Fields, Further extends Fields> = {
  readonly [Key in keyof Needed]: ValueOf<Needed[Key]> | undefined;
} & { readonly [Key in keyof Further]: ValueOf<Further[Key]> | null | undefined };

/** A mapping with known keys. */
export interface MappingField<Needed extends Fields, Further extends Fields> extends Field<
  MappingValue<Needed, Further>
> {
  /** Reads what is sound although the rest is not; undefined only where no mapping stands. */
  readonly readParts: (raw: unknown, spot: FileSpot) => MappingParts<Needed, Further> | undefined;
}

/**
 * A mapping: the keys that must be there and those that may.
 * @param schema more to hold it to, for editors
 */
export function mapping<Needed extends Fields, Further extends Fields>(
  description: string,
  needed: Needed,
  further: Further,
  schema: JsonSchema = {},
): MappingField<Needed, Further> {
  const keys = [...Object.keys(needed), ...Object.keys(further)];
  const readParts = (raw: unknown, spot: FileSpot): Record<string, unknown> | undefined => {
    if (!isMapping(raw))
      return spot.error(raw, `${description}: a mapping with ${keys.slice(0, 4).join(", ")}…`);
    for (const key of Object.keys(raw))
      if (!keys.includes(key)) spot.key(key).error(key, `a known key${nearHint(key, keys)}`);
    const parts: Record<string, unknown> = {};
    for (const [key, field] of Object.entries(needed))
      parts[key] = isBlank(raw, key) ? missing(field, spot.key(key)) : field.read(raw[key], spot.key(key));
    for (const [key, field] of Object.entries(further))
      parts[key] = isBlank(raw, key) ? null : field.read(raw[key], spot.key(key));
    return parts;
  };
  return {
    schema: {
      description,
      type: "object",
      properties: {
        ...mapped(needed, (field) => field.schema),
        ...mapped(further, (field) => schemaOrNull(field.schema)),
      },
      ...(Object.keys(needed).length > 0 && { required: Object.keys(needed) }),
      additionalProperties: false,
      ...schema,
    },
    readParts: (raw, spot) => readParts(raw, spot) as MappingParts<Needed, Further> | undefined,
    read: (raw, spot) => {
      const parts = readParts(raw, spot);
      if (parts === undefined || Object.values(parts).includes(undefined)) return undefined;
      return parts as MappingValue<Needed, Further>;
    },
  };
}

function isBlank(raw: Readonly<Record<string, unknown>>, key: string): boolean {
  return !Object.hasOwn(raw, key) || raw[key] === null;
}

function missing(field: Field<unknown>, spot: FileSpot): undefined {
  return spot.error(undefined, `this key, ${String(field.schema["description"])}`, "missing-cell");
}

function mapped<T>(fields: Fields, value: (field: Field<unknown>) => T): Record<string, T> {
  return Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, value(field)]));
}

/** The schema of a key that may also be left blank. */
function schemaOrNull(schema: JsonSchema): JsonSchema {
  const { type, enum: words, description } = schema;
  if (Array.isArray(words)) return { ...schema, enum: [...(words as unknown[]), null] };
  if (typeof type === "string" && type !== "object") return { ...schema, type: [type, "null"] };
  if (Array.isArray(type)) return { ...schema, type: [...(type as unknown[]), "null"] };
  return { description, anyOf: [schema, { type: "null" }] };
}
