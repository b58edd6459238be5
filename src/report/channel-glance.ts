import type { Survey } from "../scan/index.js";
import type { ChannelPlan } from "../venue/index.js";
import { glanceLine, linkWords, reachWords } from "./link-lines.js";
import { framesAMinute } from "./number-format.js";

/** The answer in at most eight lines of at most 80 columns: a label, then the words. */
export function channelGlance(plan: ChannelPlan, survey: Survey): string[] {
  const lines: (readonly [string, string])[] = [
    ["Where", whereWords(survey)],
    ["Use", useWords(plan)],
    ["To move", movingWords(plan)],
    ["Link", linkWords(plan)],
    ["Reach", reachWords(plan)],
    ["Audience", audienceWords(plan, survey)],
    [
      "Do",
      doWords(plan, survey)
        .map((words, index) => `${index + 1} ${words}`)
        .join("; "),
    ],
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
  const named = places.filter((place) => place !== "");
  const list = named.length === 0 ? "places not named" : named.join(", ");
  const crowd = fullestCrowd === null ? "" : `; fullest room scanned: ${fullestCrowd}`;
  const short = `${named.length} places${crowd}`;
  return list.length + crowd.length <= 70 ? `${list}${crowd}` : short;
}

function useWords(plan: ChannelPlan): string {
  const { recommended, backup, hopSet } = plan;
  if (hopSet !== null) {
    const kept = `hop set of ${hopSet.channels.length} frequencies`;
    const out = hopSet.excludedRanges.map(({ fromMhz, toMhz }) => `${fromMhz}–${toMhz}`).join(", ");
    return out === "" ? kept : `${kept}; keep out ${out} MHz`;
  }
  if (recommended.channel === null) return `no radio channel: ${recommended.reason}`;
  const least = holds(plan) ? "" : "NOTHING IS CLEAR; least bad: ";
  const fallback =
    backup.channel === null ? `no fallback: ${backup.reason}` : `fallback radio ch ${backup.channel}`;
  const mhz = plan.ranking.find(({ channel }) => channel === backup.channel)?.centreMhz;
  const at = mhz === undefined ? "" : ` (${mhz} MHz)`;
  return `${least}${radioChannelWords(plan, recommended.channel)}; ${fallback}${at}`;
}

function movingWords({ setting, hopSet }: ChannelPlan): string {
  if (hopSet !== null) return "nothing to move: the radio hops";
  const relinkS = setting.profile.relinkS.value;
  switch (setting.profile.receiversFollow.value) {
    case "yes":
      return `receivers find the fallback by themselves${relinkS === null ? "" : ` in ${relinkS} s`}`;
    case "no":
      return "each receiver needs a visit on the lift to reach the fallback";
    case "unknown":
      return "not known whether receivers follow to the fallback: allow for a lift visit";
  }
}

function audienceWords({ frames }: ChannelPlan, { fullestCrowd }: Survey): string {
  if (frames === null) return "nothing would work";
  const when = fullestCrowd === "full" ? "full house" : "as scanned, not full";
  const rare = framesAMinute(frames.edge.lostPerMinute);
  return `${when}: ${framesAMinute(frames.typical.lostPerMinute)} lost; worst spots ${rare}`;
}

function doWords(plan: ChannelPlan, survey: Survey): string[] {
  const { setting, ranking, recommended } = plan;
  const own = setting.profile.generic ? ["enter your radio's figures"] : [];
  const full = survey.evidence.grade === "one-look" ? ["scan the full room"] : [];
  if (holds(plan)) {
    const keep = keepClearWords(plan);
    return [...(keep === null ? [] : [keep]), ...own, ...full];
  }
  const staff = recommended.channel === null ? null : dominantWords(ranking, survey, recommended.channel);
  const hop = plan.hopSet === null ? ["try a hopping radio"] : [];
  return [staff ?? "ask the network staff", "antenna nearer", ...hop, "else do not sell it as wireless"];
}

/** What to ask of the network staff so that the recommended channel stays as it is. */
function keepClearWords({ ranking, recommended }: ChannelPlan): string | null {
  const best = ranking.find(({ channel }) => channel === recommended.channel);
  return best === undefined ? null : `ask network staff to keep ${best.centreMhz} MHz clear`;
}

function dominantWords(ranking: ChannelPlan["ranking"], survey: Survey, channel: number): string | null {
  const dominant = ranking.find((score) => score.channel === channel)?.contributors[0]?.emitter;
  const source = survey.emitters.find(({ emitter }) => emitter === dominant);
  return source === undefined ? null : `network staff: clear Wi-Fi ch ${source.channel}`;
}
