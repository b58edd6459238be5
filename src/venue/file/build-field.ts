import { materials } from "../../propagation/index.js";
import type { WallLayer } from "../../propagation/index.js";
import type { WallBuild } from "../venue-room.js";
import type { Field } from "./field.js";
import { refined } from "./field.js";
import { list } from "./field-list.js";
import { mapping } from "./field-mapping.js";
import { figure, word } from "./field-values.js";
import type { FileSpot } from "./file-spot.js";

const material = word("material of ITU-R P.2040", Object.keys(materials));
const thickness = {
  thickness_mm: figure("thickness, mm", [0.1, 10_000]),
  thickness_in: figure("thickness, inches", [0.005, 400]),
};
const layerField: Field<WallLayer> = refined(
  mapping("a layer", { material }, thickness, {
    oneOf: [{ required: ["thickness_mm"] }, { required: ["thickness_in"] }],
  }),
  (part, spot) => layerOf(part.material, part, spot),
);

/** Keys that say what a wall, a door or a pane is made of: a material, layers, or a loss. */
export const buildKeys = {
  material,
  ...thickness,
  layers: list("layers in order; a cavity is a layer of air", layerField, { leastCount: 1, mostCount: 16 }),
  loss_db: figure("loss at 2.4 GHz, dB, where that is all that is known", [0, 200]),
};

/** One of material, layers and loss_db. */
export const BUILD_SCHEMAS = ["material", "layers", "loss_db"].map((key) => ({ required: [key] }));

/** What the keys of {@link buildKeys} come to. */
interface BuildPart {
  readonly material: string | null;
  readonly thickness_mm: number | null;
  readonly thickness_in: number | null;
  readonly layers: readonly WallLayer[] | null;
  readonly loss_db: number | null;
}

/** @returns undefined when it isn't exactly one of the ways to say it, and told of */
export function buildOf(
  part: BuildPart,
  spot: FileSpot,
  more: readonly string[] = [],
): WallBuild | undefined {
  const { layers, loss_db: lossDb } = part;
  const ways = ["material", "layers", "loss_db"].filter((key) => part[key as keyof BuildPart] !== null);
  if (ways.length !== 1) {
    const expected = `one of ${["material with thickness_mm or thickness_in", "layers", "loss_db", ...more].join(", ")}`;
    return spot.error(ways.length === 0 ? undefined : ways.join(" and "), expected, "contradiction");
  }
  if (part.material !== null) return layerOf(part.material, part, spot);
  if (part.thickness_mm !== null || part.thickness_in !== null)
    return spot.error(`a thickness with ${ways[0]}`, "a thickness only beside a material", "contradiction");
  return layers === null ? { lossDb: lossDb! } : { layers };
}

function layerOf(
  name: string,
  part: Pick<BuildPart, "thickness_mm" | "thickness_in">,
  spot: FileSpot,
): WallLayer | undefined {
  const { thickness_mm: mm, thickness_in: inches } = part;
  if ((mm === null) === (inches === null))
    return spot
      .key("thickness_mm")
      .error(
        mm === null ? undefined : "both thickness_mm and thickness_in",
        `one of thickness_mm and thickness_in for ${name}`,
        mm === null ? "missing-cell" : "contradiction",
      );
  return { material: name, thicknessM: mm === null ? inches! * 0.0254 : mm / 1000 };
}
