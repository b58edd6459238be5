import { ratioToDb, SLACK } from "../../units/index.js";
import { loadsOf } from "../channels/assignment-loads.js";
import type { AssignmentLoads } from "../channels/assignment-loads.js";

/** A system may give up this much working margin so that more is to spare over interference, dB: nobody measures it. */
const GIVEN_UP_DB = 0.25;
/** Spare margins are compared in steps of this, dB, so that no walk goes round in circles. */
const STEP_DB = 0.5;

/**
 * Where sensitivity caps what systems are worth, many plans are equal, or differ by hundredths of a decibel by the
 * frequency alone. Of those near the best this looks for one with more to spare over interference, weakest system
 * first, one system moving at a time; what it ends at is not proved the best of them. The smallest value stays.
 * @param loads what the plan was found with
 * @param interferenceOnly the same without the caps
 * @returns [system] channel
 */
export function widenSpare(
  loads: AssignmentLoads,
  interferenceOnly: AssignmentLoads,
  start: readonly number[],
): number[] {
  const valuesOf = (channels: readonly number[]): number[] => dbOf(loadsOf(loads, channels));
  const spareOf = (channels: readonly number[]): number[] =>
    dbOf(loadsOf(interferenceOnly, channels)).sort((a, b) => a - b);
  const asFound = valuesOf(start);
  const leastDb = Math.min(...asFound);
  const mayBe = (channels: readonly number[]): boolean =>
    valuesOf(channels).every((valueDb, r) => valueDb >= Math.max(leastDb - SLACK, asFound[r]! - GIVEN_UP_DB));
  let best = { channels: [...start], spareDb: spareOf(start) };
  for (;;) {
    let better = best;
    for (const channels of movesFrom(loads, best.channels)) {
      const spareDb = spareOf(channels);
      if (gainsOver(spareDb, better.spareDb) && mayBe(channels)) better = { channels, spareDb };
    }
    if (better === best) return best.channels;
    best = better;
  }
}

function dbOf(loadRatios: Float64Array): number[] {
  return Array.from(loadRatios, (ratio) => -ratioToDb(ratio));
}

/** In steps of half a decibel: is the first that differs, from the smallest up, greater by more than is given up? */
function gainsOver(spareDb: readonly number[], thanDb: readonly number[]): boolean {
  const steps = (valueDb: number): number => Math.floor(valueDb / STEP_DB);
  const first = spareDb.findIndex((oneDb, k) => steps(oneDb) !== steps(thanDb[k]!));
  return first >= 0 && spareDb[first]! - thanDb[first]! >= GIVEN_UP_DB;
}

function* movesFrom(
  { starts, channelCounts, usable }: AssignmentLoads,
  channels: readonly number[],
): Generator<number[]> {
  for (let r = 0; r < channels.length; r++)
    for (let c = 0; c < channelCounts[r]!; c++)
      if (c !== channels[r] && usable[starts[r]! + c] === 1)
        yield channels.map((channel, o) => (o === r ? c : channel));
}
