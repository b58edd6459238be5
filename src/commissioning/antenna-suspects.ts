import { median } from "d3-array";
import { SLACK } from "../units/index.js";
import type { AntennaSuspicion, ReceiverCheck, ReceiverPrediction } from "./receiver-check.js";

/** So far below its neighbours a receiver is suspect, dB: common practice, no source. */
export const SUSPECT_DB = 10;
/** From here on an open connector is likelier than a null, dB: common practice, no source. */
export const LOOSE_DB = 20;
/** Neighbours agree when the median of their distances from their median is at most this, dB (assumed). */
const AGREEING_DB = 6;
const NEAREST_COUNT = 6;
const LEAST_NEIGHBOURS_COUNT = 2;

/**
 * Receivers that are low among good neighbours: by 10 dB or more below the median difference from the plan of the
 * six nearest of the room (of all others where places are not known), at least two, which agree among themselves.
 * A whole room that is low by the same amount names nobody.
 * @returns the checks, with suspicion and verdict where there is one
 */
export function withAntennaSuspects(
  checks: readonly ReceiverCheck[],
  predictions: readonly ReceiverPrediction[],
): ReceiverCheck[] {
  const places = new Map(predictions.map(({ receiver, at }) => [receiver, at ?? null]));
  return checks.map((check) => {
    const suspicion = suspicionOf(check, nearest(check, checks, places));
    return suspicion === null ? check : { ...check, suspicion, verdict: "antenna-suspect" };
  });
}

function suspicionOf(check: ReceiverCheck, neighbours: readonly ReceiverCheck[]): AntennaSuspicion | null {
  const ownDb = check.differenceDb ?? check.differenceAtMostDb;
  const heardDb = neighbours.flatMap(({ differenceDb }) => differenceDb ?? []);
  if (ownDb === null || heardDb.length < LEAST_NEIGHBOURS_COUNT) return null;
  const middleDb = median(heardDb)!;
  const spreadDb = median(heardDb, (each) => Math.abs(each - middleDb))!;
  const belowNeighboursDb = middleDb - ownDb;
  if (belowNeighboursDb < SUSPECT_DB - SLACK || spreadDb > AGREEING_DB + SLACK) return null;
  const causes =
    belowNeighboursDb >= LOOSE_DB - SLACK
      ? (["loose-antenna", "null"] as const)
      : (["null", "loose-antenna"] as const);
  return { causes, belowNeighboursDb, neighbourCount: heardDb.length };
}

/** Others of the room that were read, nearest first. */
function nearest(
  check: ReceiverCheck,
  checks: readonly ReceiverCheck[],
  places: ReadonlyMap<string, ReceiverPrediction["at"]>,
): ReceiverCheck[] {
  const here = places.get(check.receiver) ?? null;
  const apartM = ({ receiver }: ReceiverCheck): number => {
    const there = places.get(receiver) ?? null;
    if (here === null || there === null) return Infinity;
    return Math.hypot(here.x - there.x, here.y - there.y, here.z - there.z);
  };
  const others = checks.filter((other) => other !== check && other.room === check.room);
  const read = others.filter(({ differenceDb }) => differenceDb !== null);
  if (here === null) return read;
  return read
    .map((other) => ({ other, m: apartM(other) }))
    .sort((a, b) => (a.m === b.m ? 0 : a.m - b.m))
    .slice(0, NEAREST_COUNT)
    .map(({ other }) => other);
}
