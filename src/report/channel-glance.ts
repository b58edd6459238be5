import { printable } from "../issues/index.js";
import type { Survey } from "../scan/index.js";
import type { ChannelPlan } from "../venue/index.js";
import { glanceLine, linkWords, reachWords } from "./link-lines.js";
import { fixed } from "./number-format.js";
import { columnsOf } from "./text-layout.js";

/** The answer in at most eight lines of at most 80 columns: a label, then the words. */
export function channelGlance(plan: ChannelPlan, survey: Survey): string[] {
  const lines: (readonly [string, string])[] = [
    ["Where", whereWords(survey)],
    ["Use", useWords(plan)],
    ["Link", linkWords(plan)],
    ["Reach", reachWords(plan)],
    ["Audience", audienceWords(plan, survey)],
    ...(holds(plan) ? planningLines(plan, survey) : rescueLines(plan, survey)),
    ["Trust", `${survey.evidence.grade}; next look: ${survey.evidence.next}`],
  ];
  return lines.map(([label, words]) => glanceLine(label, words));
}

/** Does the reference receiver work on what is recommended? */
export function holds(plan: ChannelPlan): boolean {
  return plan.link.reference !== null && plan.link.reference.verdict !== "fails";
}

/** `radio ch 6 (2437 MHz)`: a bare number has three meanings in this trade. */
export function radioChannelWords(plan: ChannelPlan, channel: number): string {
  const centreMhz = plan.ranking.find((score) => score.channel === channel)?.centreMhz;
  return `radio ch ${channel} (${centreMhz} MHz)`;
}

function whereWords({ places, fullestCrowd }: Survey): string {
  const named = places.filter((place) => place !== "").map((place) => printable(place, 40));
  const crowd = fullestCrowd === null ? "" : `; fullest room scanned: ${fullestCrowd}`;
  if (named.length === 0) return `places not named${crowd}`;
  for (let shown = named.length; shown > 0; shown--) {
    const more = shown < named.length ? ` and ${named.length - shown} more` : "";
    const words = `${named.slice(0, shown).join(", ")}${more}${crowd}`;
    if (columnsOf(words) <= 70) return words;
  }
  return `${named.length} places${crowd}`;
}

function useWords(plan: ChannelPlan): string {
  const { recommended, backup, hopSet } = plan;
  if (hopSet !== null) {
    const kept = `hop set of ${hopSet.channels.length} frequencies`;
    const out = hopSet.excludedRanges.map(({ fromMhz, toMhz }) => `${fromMhz}–${toMhz}`).join(", ");
    return out === "" ? kept : `${kept}; keep out ${out} MHz`;
  }
  if (recommended.channel === null) return `no radio channel: ${recommended.reason}`;
  if (!holds(plan)) return leastBadWords(plan, recommended.channel);
  const fallback =
    backup.channel === null ? `no fallback: ${backup.reason}` : `fallback radio ch ${backup.channel}`;
  const mhz = plan.ranking.find(({ channel }) => channel === backup.channel)?.centreMhz;
  const at = mhz === undefined ? "" : ` (${mhz} MHz)`;
  return `${radioChannelWords(plan, recommended.channel)}; ${fallback}${at}`;
}

function leastBadWords(plan: ChannelPlan, channel: number): string {
  const fallback = plan.backup.channel === null ? "" : `, fallback radio ch ${plan.backup.channel}`;
  return `NOTHING CLEAR; least bad ${radioChannelWords(plan, channel)}${fallback}`;
}

/** The plan works: what the fallback costs, then what to do. */
function planningLines(plan: ChannelPlan, survey: Survey): (readonly [string, string])[] {
  const best = plan.ranking.find(({ channel }) => channel === plan.recommended.channel);
  const steps = [
    ...(best === undefined ? [] : [`have ${best.centreMhz} MHz kept clear`]),
    ...(plan.setting.profile.generic ? ["enter your radio's figures"] : []),
    ...(survey.fullestCrowd === "full" ? [] : ["scan it full"]),
  ];
  return [
    ["To move", movingWords(plan)],
    ["Do", steps.length === 0 ? "nothing more than the survey's next look" : numbered(steps, 1)],
  ];
}

/** Nothing is clear: what to try, in order. */
function rescueLines(plan: ChannelPlan, survey: Survey): (readonly [string, string])[] {
  const hop = plan.hopSet === null ? ["try a hopping profile"] : [];
  return [
    ["Do", numbered([`ask the network staff to clear ${dominantWords(plan, survey)}`, "antenna nearer"], 1)],
    ["", numbered([...hop, "do not sell this job as wireless"], 3)],
  ];
}

function numbered(steps: readonly string[], first: number): string {
  return steps.map((step, index) => `${first + index} ${step}`).join("; ");
}

/** Whose channel it is that hurts most. */
function dominantWords({ ranking, recommended }: ChannelPlan, survey: Survey): string {
  const score = ranking.find(({ channel }) => channel === recommended.channel) ?? ranking[0];
  const dominant = score?.contributors[0]?.emitter;
  const source = survey.emitters.find(({ emitter }) => emitter === dominant);
  return source === undefined ? "the band" : `Wi-Fi ch ${source.channel}`;
}

function movingWords({ setting, hopSet }: ChannelPlan): string {
  if (hopSet !== null) return "nothing to move: the radio hops";
  const relinkS = setting.profile.relinkS.value;
  switch (setting.profile.receiversFollow.value) {
    case "yes":
      return `receivers find the fallback by themselves${relinkS === null ? "" : ` in ${relinkS} s`}`;
    case "no":
      return "the fallback needs a lift visit to each receiver";
    case "unknown":
      return "the fallback may need a lift visit: not known if receivers follow";
  }
}

function audienceWords({ frames, setting }: ChannelPlan, { fullestCrowd }: Survey): string {
  if (frames === null) return "nothing would work";
  const when = fullestCrowd === "full" ? "full house" : "as scanned";
  const worst = `worst ${fixed((1 - setting.reliability) * 100, 0)} % of spots`;
  const { typical, edge } = frames;
  if (edge.lostPerMinute <= 0) return `${when}: no frames lost, nor at the ${worst}`;
  const all = Math.round(setting.profile.frameRateHz.value * 60);
  const usual =
    typical.lostPerMinute <= 0 ? `none of ${all}` : `${wholeFrames(typical.lostPerMinute)} of ${all}`;
  return `${when}: ${usual} frames a minute lost; ${worst} ${wholeFrames(edge.lostPerMinute)}`;
}

function wholeFrames(lostPerMinute: number): string {
  return lostPerMinute < 1 ? "under 1" : String(Math.round(lostPerMinute));
}
