import { fitPathLoss, pathModelPredictionDb, pathModelRecord, walkLosses } from "../commissioning/index.js";
import type { FittedPathLoss, PathModelRecord, ReadingsImport, WalkLosses } from "../commissioning/index.js";
import type { Issue } from "../issues/index.js";
import { pathLossDb, pathModelWords, profileTerms, referencePathModel } from "../propagation/index.js";
import type { RadioProfile } from "../radio/index.js";
import type { DistancePrediction, FitReport, LengthUnit } from "../report/index.js";
import { feetToM } from "../units/index.js";
import type { FitFigures } from "./fit-options.js";
import { placedWalk } from "./walk-places.js";
import type { WalkPlaces, WalkTransmitter } from "./walk-places.js";

/** All that a fit is made from. */
export interface FitInput {
  readonly readings: ReadingsImport;
  readonly profile: RadioProfile;
  readonly countsEnclosure: boolean;
  readonly figures: FitFigures;
  readonly transmitter: WalkTransmitter;
  readonly places: WalkPlaces;
  readonly withWalls: boolean;
  readonly units: LengthUnit;
  readonly modelPath: string | null;
  readonly issues: readonly Issue[];
}

/** Everything that `fit` tells. @throws {CliError} exit 64 where nothing knows the transmitter */
export function fitReport(input: FitInput): FitReport {
  const { readings, profile, countsEnclosure, figures, units } = input;
  const { frequencyMhz, confidenceRatio, ignoredLines, floorDbm } = figures;
  const kept = readings.readings.filter(({ line }) => !ignoredLines.includes(line));
  const placed = placedWalk(kept, input.transmitter, input.places);
  const losslessDbm = losslessLevelDbm(profile, countsEnclosure);
  const all = walkLosses(placed.readings, { losslessDbm, transmitters: placed.transmitters });
  const walk = input.withWalls ? all : { ...all, wallCount: undefined };
  const fit = fitPathLoss({ ...walk, confidenceRatio });
  const model =
    fit.refusal !== null
      ? null
      : pathModelRecord(fit, { readings: walk, ...(frequencyMhz !== null && { frequencyMhz }) });
  const predictAt = predictor(model, confidenceRatio, frequencyMhz ?? MIDDLE_MHZ);
  const furthestM = fit.refusal === null ? fit.distanceRangeM[1] : 0;
  return {
    readings,
    walk,
    leftOut: [...readings.readings.filter((each) => !kept.includes(each)), ...placed.others],
    fit,
    heardOnly: heardOnlyFit(walk, fit.refusal === null, confidenceRatio),
    model,
    reference: predictAt(Math.min(REFERENCE_M, furthestM)),
    predictions: distancesM(units, furthestM).flatMap((distanceM) => predictAt(distanceM) ?? []),
    profile,
    losslessDbm,
    countsEnclosure,
    floorDbm,
    defaultWords: `${pathModelWords(referencePathModel)}: what plans rest on without a fit`,
    modelPath: model === null ? null : input.modelPath,
    issues: input.issues,
  };
}

/** The middle of the band, where nobody says at which frequency was walked. */
const MIDDLE_MHZ = 2442;
const REFERENCE_M = 20;
const DISTANCES = {
  m: [2, 5, 10, 15, 20, 30, 40, 60, 80, 100],
  ft: [7, 15, 30, 50, 65, 100, 130, 200, 250, 330],
};

/** Rows up to half as far again as was heard. */
function distancesM(units: LengthUnit, furthestM: number): number[] {
  const inM = DISTANCES[units].map((each) => (units === "m" ? each : feetToM(each)));
  return inM.filter((each) => each <= furthestM * 1.5);
}

/** Transmit power and both antennas, as if aimed at each other, less what stood before every reading alike. */
function losslessLevelDbm(profile: RadioProfile, countsEnclosure: boolean): number {
  const { txPowerDbm, txFeederLossDb, txGainDbi, rxGainDbi, enclosureLossDb } = profileTerms(profile);
  return txPowerDbm - txFeederLossDb + txGainDbi + rxGainDbi - (countsEnclosure ? enclosureLossDb : 0);
}

function heardOnlyFit(walk: WalkLosses, isFitted: boolean, confidenceRatio: number): FittedPathLoss | null {
  if (!isFitted || !walk.censored.some(Boolean)) return null;
  const heard = <T>(list: readonly T[]): T[] => list.filter((_, index) => walk.censored[index] !== true);
  const fit = fitPathLoss({
    distanceM: heard(walk.distanceM),
    lossDb: heard(walk.lossDb),
    ...(walk.wallCount !== undefined && { wallCount: heard(walk.wallCount) }),
    confidenceRatio,
  });
  return fit.refusal === null ? fit : null;
}

function predictor(
  model: PathModelRecord | null,
  confidenceRatio: number,
  frequencyMhz: number,
): (distanceM: number) => DistancePrediction | null {
  if (model === null) return () => null;
  return (distanceM) => ({
    distanceM,
    ...pathModelPredictionDb(model, distanceM, { confidenceRatio }),
    defaultLossDb: pathLossDb(referencePathModel, { distanceM, frequencyMhz }),
  });
}
