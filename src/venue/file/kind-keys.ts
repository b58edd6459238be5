import type { JsonSchema } from "./field.js";
import type { FileSpot } from "./file-spot.js";

/** For each kind of a thing the keys that it must have and those that it may have. */
export type KindKeys<Kind extends string> = Readonly<
  Record<Kind, { readonly needed: readonly string[]; readonly further: readonly string[] }>
>;

/**
 * Holds a mapping to the keys of its kind.
 * @param shared keys of every kind
 * @returns whether it has all that it needs and nothing that isn't its own; what is wrong was told
 */
export function heldToKind<Kind extends string>(
  part: Readonly<Record<string, unknown>>,
  kind: Kind,
  kinds: KindKeys<Kind>,
  spot: FileSpot,
  shared: readonly string[] = [],
): boolean {
  const { needed, further } = kinds[kind];
  const lacking = needed.filter((key) => part[key] === null);
  for (const key of lacking) spot.key(key).error(undefined, `this key, which ${kind} needs`, "missing-cell");
  const allowed = ["kind", ...needed, ...further, ...shared];
  const strange = Object.keys(part).filter((key) => part[key] !== null && !allowed.includes(key));
  for (const key of strange)
    spot
      .key(key)
      .error(part[key], `no such key with ${kind}, which has ${allowed.join(", ")}`, "contradiction");
  return lacking.length + strange.length === 0;
}

/** The needed keys of each kind as a schema. */
export function kindSchema(kinds: KindKeys<string>): JsonSchema {
  const rules = Object.entries(kinds).filter(([, { needed }]) => needed.length > 0);
  return {
    allOf: rules.map(([kind, { needed }]) => ({
      if: { type: "object", properties: { kind: { const: kind } }, required: ["kind"] },
      then: { type: "object", required: needed },
    })),
  };
}
