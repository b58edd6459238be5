import type { Material, MaterialCoefficients } from "./material.js";

/** Materials with coefficients of their own. */
export type MaterialName = keyof typeof rows;

type Row = readonly [a: number, b: number, c: number, d: number, lowGhz: number, highGhz: number];

const TABLE_3 = "ITU-R P.2040-3 (08/2023) Table 3, read in the open ray tracer sionna-rt 1.0.1";
const AIR = "ITU-R P.2040-3 Table 3, vacuum: lossless by definition; range from memory";
const EDITION_4 =
  "ITU-R P.2040-4 (09/2025) Table 3, as two open implementations agree; the text itself not read";

const rows = {
  air: row("air", [1, 0, 0, 0, 0.001, 100], AIR),
  concrete: row("concrete", [5.24, 0, 0.0462, 0.7822, 1, 100]),
  brick: row("brick", [3.91, 0, 0.0238, 0.16, 1, 40]),
  plasterboard: row("plasterboard", [2.73, 0, 0.0085, 0.9395, 1, 100]),
  wood: row("wood", [1.99, 0, 0.0047, 1.0718, 0.001, 100]),
  glass: row("glass", [6.31, 0, 0.0036, 1.3394, 0.1, 100]),
  "ceiling-board": row("ceiling-board", [1.48, 0, 0.0011, 1.075, 1, 100]),
  chipboard: row("chipboard", [2.58, 0, 0.0217, 0.78, 1, 100]),
  plywood: row("plywood", [2.71, 0, 0.33, 0, 1, 40]),
  marble: row("marble", [7.074, 0, 0.0055, 0.9262, 1, 60]),
  floorboard: row("floorboard", [3.66, 0, 0.0044, 1.3515, 50, 100]),
  metal: { ...row("metal", [1, 0, 1e7, 0, 1, 100]), opaque: true },
  "very-dry-ground": row("very-dry-ground", [3, 0, 0.00015, 2.52, 1, 10]),
  "medium-dry-ground": row("medium-dry-ground", [15, -0.1, 0.035, 1.63, 1, 10]),
  "wet-ground": row("wet-ground", [30, -0.4, 0.15, 1.3, 1, 10]),
  "vinyl-tile": row("vinyl-tile", [3.62, 0, 0.0051, 0.8422, 1, 40], EDITION_4),
  "carpet-tile": row("carpet-tile", [2.08, 0, 0.0009, 0.82, 1, 40], EDITION_4),
  "asphalt-concrete": row("asphalt-concrete", [4.83, 0, 0.0108, 1.3969, 1, 40], EDITION_4),
} satisfies Record<string, Material>;

/**
 * Building materials of ITU-R P.2040-3, and three that edition -4 adds. Floorboard was fitted at 50–100 GHz
 * only: at 2.4 GHz its loss carries a caveat. Editions matter most for concrete: 200 mm loses 14.8 dB by
 * edition -3 and 11.2 dB by edition -1, whose coefficients can be given as they are.
 * @source ITU-R P.2040-3 (08/2023) Table 3; each material names its own
 * @example materials.concrete.coefficients.value; // => { a: 5.24, b: 0, c: 0.0462, d: 0.7822 }
 */
export const materials: Readonly<Record<MaterialName, Material>> = rows;

function row(name: string, [a, b, c, d, lowGhz, highGhz]: Row, source = TABLE_3): Material {
  const value: MaterialCoefficients = { a, b, c, d };
  return {
    name,
    edition: source === EDITION_4 ? "ITU-R P.2040-4" : "ITU-R P.2040-3",
    coefficients: { value, status: "standard", source },
    rangeMhz: [lowGhz * 1000, highGhz * 1000],
    opaque: false,
  };
}
