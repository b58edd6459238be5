import type { ChannelPlan } from "../venue/index.js";
import { chancePercent, chosenLengths, exactPercent, heldPercent } from "./number-format.js";
import type { LengthUnit } from "./pen.js";

/**
 * What the share for each receiver means for all of them; of twenty where their number was not stated. Where the
 * reference receiver fails, that is only so within the reach: what holds at its own distance is told beside it.
 */
export function jobLine(plan: ChannelPlan, unit: LengthUnit): string {
  const ask = plan.job === null && plan.exampleJob !== null ? ["For your job: --receivers N."] : [];
  return [shareLine(plan), ...beyondReach(plan, unit), ...ask].join(" ");
}

/** The share holds within the reach alone: what a receiver further off may count on. */
function beyondReach({ link, job, setting }: ChannelPlan, unit: LengthUnit): string[] {
  if (link.reference?.verdict !== "fails") return [];
  const { heldRatio } = link.reference;
  const count = job?.receiverCount ?? 1;
  const all = count === 1 ? "" : `, all ${count} with ${chancePercent(heldRatio ** count)}`;
  const within = link.reachM === 0 ? "nowhere here" : "only within the reach";
  return [
    `That is so ${within}: at ${chosenLengths(setting.distanceM, unit)} ${heldPercent(heldRatio)} of positions hold${all}.`,
  ];
}

function shareLine({ job, exampleJob, setting }: ChannelPlan): string {
  const each = `${exactPercent(setting.reliability)} is per receiver`;
  if (job === null) {
    if (exampleJob === null) return `${each}.`;
    const { receiverCount, expectedInHoleCount, allHoldProbability } = exampleJob;
    return `${each}: of ${receiverCount}, for example, ${holeWords(expectedInHoleCount)} in a hole on average; all hold with ${chancePercent(allHoldProbability)}.`;
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
 * chance that all hold, which it does within the reach; nothing where there is none.
 * @param beyond the reach leaves the model: the share alone is then not told
 */
export function shareWords({ job, setting, link }: ChannelPlan, beyond: boolean): string[] {
  if (link.reachM === 0) return []; // no place at which the share holds
  const each = exactPercent(setting.reliability);
  const fails = link.reference?.verdict === "fails"; // how many hold within the reach is then no comfort
  if (job === null || job.receiverCount === 1 || fails) return beyond ? [] : [`at ${each} of positions`];
  const { receiverCount, allHoldProbability, setForAll } = job;
  const chance = setForAll ? exactPercent(allHoldProbability) : chancePercent(allHoldProbability);
  return [`at ${each}, all ${receiverCount} hold: ${chance}`, `all ${receiverCount} hold: ${chance}`];
}

function holeWords(count: number): string {
  if (count < 0.01) return "under 0.01";
  return String(Number(count.toPrecision(count < 10 ? 2 : 3)));
}
