import { ArgumentError, requireFinite } from "../issues/index.js";
import { nearestWord } from "../radio/index.js";
import type { Material, MaterialCoefficients } from "./material.js";
import { OWN_COEFFICIENTS } from "./material.js";
import { materials } from "./material-table.js";

/**
 * A material by its name in ITU-R P.2040-3 (case, and whether words are joined by space, hyphen or
 * underscore, don't matter), or one made of the caller's own coefficients.
 * @throws {ArgumentError} for an unknown name (the nearest known one is suggested), a coefficient that is
 *   not finite, a negative conductivity c
 * @example findMaterial("Ceiling board").edition; // => "ITU-R P.2040-3"
 */
export function findMaterial(material: string | MaterialCoefficients): Material {
  if (typeof material !== "string") return ownMaterial(material);
  const known =
    named(material) ??
    named(
      material
        .trim()
        .toLowerCase()
        .replaceAll(/[\s_]+/g, "-"),
    );
  if (known !== undefined) return known;
  const names = Object.keys(materials);
  const near = nearestWord(material, names);
  const hint = near === null ? "" : ` (did you mean ${near}?)`;
  throw new ArgumentError("material", `one of ${names.join(", ")}, or { a, b, c, d }${hint}`, material);
}

function named(name: string): Material | undefined {
  return Object.hasOwn(materials, name) ? (materials as Record<string, Material>)[name] : undefined;
}

function ownMaterial(given: unknown): Material {
  if (typeof given !== "object" || given === null)
    throw new ArgumentError("material", "a name or { a, b, c, d }", given);
  const { a, b, c, d } = given as MaterialCoefficients;
  for (const [name, value] of Object.entries({ a, b, c, d })) requireFinite(`material.${name}`, value);
  if (c < 0) throw new ArgumentError("material.c", "a conductivity ≥ 0", c);
  return {
    name: OWN_COEFFICIENTS,
    edition: OWN_COEFFICIENTS,
    coefficients: { value: { a, b, c, d }, status: "yours", source: OWN_COEFFICIENTS },
    rangeMhz: null,
    opaque: false,
  };
}
