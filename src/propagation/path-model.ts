/** Loss in the open between two antennas. */
export interface FreeSpaceModel {
  readonly kind: "free-space";
}

/** ITU-R P.1238; the fields are those of `indoorPathLossDb`. */
export interface IndoorModel {
  readonly kind: "indoor";
  readonly distancePowerCoefficient: number;
  /** dB; 0 if not given. */
  readonly floorLossDb?: number | undefined;
}

/** Exponent and reference loss, e.g. fitted on site; the fields are those of `logDistancePathLossDb`. */
export interface LogDistanceModel {
  readonly kind: "log-distance";
  readonly exponent: number;
  readonly referenceLossDb: number;
  /** m; 1 if not given. */
  readonly referenceDistanceM?: number | undefined;
}

/** How loss grows with distance. */
export type PathModel = FreeSpaceModel | IndoorModel | LogDistanceModel;

/**
 * The reference receiver's model: indoor with N = 22 on the same floor, an open hall.
 * @source ITU-R P.1238, commercial, 1.8-2 GHz
 */
export const referencePathModel: IndoorModel = {
  kind: "indoor",
  distancePowerCoefficient: 22,
  floorLossDb: 0,
};

/**
 * The model in words, with its figures.
 * @example pathModelWords({ kind: "indoor", distancePowerCoefficient: 22 }); // => "indoor (ITU-R P.1238), N = 22, same floor"
 */
export function pathModelWords(model: PathModel): string {
  switch (model.kind) {
    case "free-space":
      return "free space (ITU-R P.525)";
    case "indoor": {
      const floors = model.floorLossDb ?? 0;
      const where = floors === 0 ? "same floor" : `${floors} dB of floors`;
      return `indoor (ITU-R P.1238), N = ${model.distancePowerCoefficient}, ${where}`;
    }
    case "log-distance":
      return `log-distance, exponent ${model.exponent}, ${model.referenceLossDb} dB at ${model.referenceDistanceM ?? 1} m`;
  }
}
