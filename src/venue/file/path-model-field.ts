import type { PathModel } from "../../propagation/index.js";
import type { Field } from "./field.js";
import { refined } from "./field.js";
import { length } from "./field-length.js";
import { mapping } from "./field-mapping.js";
import type { MappingValue } from "./field-mapping.js";
import { figure, text, word } from "./field-values.js";
import type { FileSpot } from "./file-spot.js";
import { heldToKind, kindSchema } from "./kind-keys.js";

const KINDS = {
  "free-space": { needed: [], further: [] },
  indoor: { needed: ["distance_power_coefficient"], further: ["floor_loss_db"] },
  "indoor-abg": { needed: ["place", "sight"], further: [] },
  "log-distance": {
    needed: ["exponent", "reference_loss_db"],
    further: ["reference_distance", "sigma_db"],
  },
} as const;

const needed = {
  kind: word("path-loss model", ["free-space", "indoor", "indoor-abg", "log-distance"]),
};
const further = {
  distance_power_coefficient: figure("N of ITU-R P.1238 (indoor)", [10, 60]),
  floor_loss_db: figure("loss of floors, dB (indoor)", [0, 200]),
  place: word("row of ITU-R P.1238-11 (indoor-abg)", ["office", "corridor", "industrial"]),
  sight: word("row of ITU-R P.1238-11 (indoor-abg)", ["LoS", "NLoS"]),
  exponent: figure("loss grows by 10 times this per tenfold distance (log-distance)", [1, 6]),
  reference_loss_db: figure("loss at the reference distance, dB (log-distance)", [1, 120]),
  reference_distance: length("distance of the reference loss, 1 m if left out (log-distance)", [0.1, 100]),
  sigma_db: figure("standard deviation of the shadowing, dB (log-distance)", [0, 30]),
};

const WORDS = "how loss grows with distance in this room; left out: ITU-R P.1238 for the building";
const modelField: Field<PathModel> = refined(mapping(WORDS, needed, further, kindSchema(KINDS)), pathModelOf);
const modelFile = text("a path model's file beside this one, as stillband fit writes it");

/** How loss grows with distance in a room: a model, or the name of a file with one. */
export const pathModelField: Field<PathModel | string> = {
  schema: {
    description: `${WORDS}; or the name of a file with a model fitted on site, as hall-model.json`,
    anyOf: [modelField.schema, modelFile.schema],
  },
  read: (raw, spot) => (typeof raw === "string" ? modelFile.read(raw, spot) : modelField.read(raw, spot)),
};

function pathModelOf(
  part: MappingValue<typeof needed, typeof further>,
  spot: FileSpot,
): PathModel | undefined {
  const { kind } = part;
  if (!heldToKind(part, kind, KINDS, spot)) return undefined;
  switch (kind) {
    case "free-space":
      return { kind };
    case "indoor":
      return {
        kind,
        distancePowerCoefficient: part.distance_power_coefficient!,
        floorLossDb: part.floor_loss_db ?? 0,
      };
    case "indoor-abg":
      return { kind, place: part.place!, sight: part.sight! };
    case "log-distance":
      return {
        kind,
        exponent: part.exponent!,
        referenceLossDb: part.reference_loss_db!,
        referenceDistanceM: part.reference_distance ?? 1,
        ...(part.sigma_db !== null && { sigmaDb: part.sigma_db }),
      };
  }
}
