import { compareReadings, nameKey } from "../commissioning/index.js";
import type { ReadingsImport, ReceiverPrediction } from "../commissioning/index.js";
import { printable } from "../issues/index.js";
import type { Expected, ReceiverForecast, VerifiedPlan, VerifiedReadings } from "../report/index.js";
import type { Venue } from "../venue/index.js";
import { CliError, EXIT } from "./exit.js";
import type { VerifyFigures } from "./verify-options.js";

/** What readings are held against. */
export interface ReadingsQuery {
  readonly read: ReadingsImport;
  /** Worked out now. */
  readonly forecasts: readonly ReceiverForecast[];
  readonly plan: VerifiedPlan | null;
  readonly venue: Venue;
  readonly figures: VerifyFigures;
  readonly floorDbm: number;
}

/**
 * Readings at the receivers against what was predicted: as the earlier plan has it where its inputs, its
 * assumptions or the program are not what they were, else worked out now. Rows read on the ground don't count.
 */
export function verifiedReadings(query: ReadingsQuery): VerifiedReadings {
  const { read, venue, plan, figures, floorDbm } = query;
  const predictedBy = plan === null || isAsThen(plan) ? "now" : "plan";
  const predictions: readonly Prediction[] = predictedBy === "plan" ? planned(plan!, venue) : query.forecasts;
  const known = new Set(predictions.map(({ receiver }) => receiver));
  const up = read.readings.filter(({ stage }) => !isGround(stage));
  const { confidenceRatio } = figures;
  return {
    read,
    comparison: compareReadings(predictions, up, { confidenceRatio }),
    forecasts: predictions,
    predictedBy,
    unpredicted: venue.receivers.map(({ name }) => name).filter((name) => !known.has(name)),
    groundCount: read.readings.length - up.length,
    floorDbm,
    isFloorAssumed: figures.floorDbm === null,
    confidenceRatio,
  };
}

type Prediction = ReceiverPrediction & Expected;

function isAsThen({ comparison }: VerifiedPlan): boolean {
  return comparison.isLikeWithLike && !comparison.isProgramChanged;
}

/** The plan file's figures, at the places that the venue file has now. */
function planned({ record }: VerifiedPlan, { receivers }: Venue): Prediction[] {
  return record.receivers.map((one) => ({
    ...one,
    at: receivers.find(({ name }) => name === one.receiver)?.at ?? null,
    ...{ basis: null, sigmaDb: null, isExtrapolated: false },
  }));
}

/** As the checklist names the stage. */
function isGround(stage: string | null): boolean {
  return stage?.trim().toLowerCase() === "ground";
}

/**
 * Readings are told apart by their receivers' names, whatever the capitals and the blanks around them.
 * @throws {CliError} exit 65 where two of a venue's receivers differ by these alone
 */
export function requireNamesApart({ receivers }: Venue): void {
  const known = new Map<string, string>();
  for (const { name } of receivers) {
    const key = nameKey(name);
    const other = known.get(key);
    if (other !== undefined)
      throw new CliError(
        EXIT.badData,
        `the receivers "${printable(other, 60)}" and "${printable(name, 60)}" differ in capitals or blanks alone: readings can't be told apart`,
        "give one of them another name in the venue file",
      );
    known.set(key, name);
  }
}
