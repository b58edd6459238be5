import type { ChannelPlan } from "../venue/index.js";
import { chancePercent, exactPercent } from "./number-format.js";

/** What the share for each receiver means for all of them; of twenty where their number was not stated. */
export function jobLine({ job, exampleJob, setting }: ChannelPlan): string {
  const each = `${exactPercent(setting.reliability)} is per receiver`;
  if (job === null) {
    if (exampleJob === null) return `${each}.`;
    const { receiverCount, expectedInHoleCount, allHoldProbability } = exampleJob;
    return `${each}: of ${receiverCount}, for example, ${holeWords(expectedInHoleCount)} in a hole on average; all hold with ${chancePercent(allHoldProbability)}. For your job: --receivers N.`;
  }
  const { receiverCount, expectedInHoleCount, allHoldProbability, setForAll } = job;
  const holes = `${holeWords(expectedInHoleCount)} in a hole on average`;
  if (receiverCount === 1) return `${each}, and there is one.`;
  return setForAll
    ? `${each}, set so that all ${receiverCount} hold with ${exactPercent(allHoldProbability)}: ${holes}.`
    : `${each}: of ${receiverCount}, ${holes}; all hold with ${chancePercent(allHoldProbability)}.`;
}

/**
 * For the opening block, the fullest words first: the share and, where the number of receivers was stated, the
 * chance that all hold.
 * @param beyond the reach leaves the model: the share alone is then not told
 */
export function shareWords({ job, setting }: ChannelPlan, beyond: boolean): string[] {
  const each = exactPercent(setting.reliability);
  if (job === null || job.receiverCount === 1) return beyond ? [] : [`at ${each} of positions`];
  const { receiverCount, allHoldProbability, setForAll } = job;
  const chance = setForAll ? exactPercent(allHoldProbability) : chancePercent(allHoldProbability);
  return [`at ${each}, all ${receiverCount} hold: ${chance}`, `all ${receiverCount} hold: ${chance}`];
}

function holeWords(count: number): string {
  if (count < 0.01) return "under 0.01";
  return String(Number(count.toPrecision(count < 10 ? 2 : 3)));
}
