import { rollup } from "d3-array";
import { printable } from "../issues/index.js";
import type { Survey } from "../scan/index.js";
import type { ChannelPlan } from "../venue/index.js";
import type { ChannelReport } from "./channel-report.js";
import { audienceWords, whenWords } from "./audience-words.js";
import { glanceLine, linkWords, reachWords } from "./link-lines.js";
import { fixed, sharePercent } from "./number-format.js";
import type { LengthUnit } from "./pen.js";
import { columnsOf } from "./text-layout.js";
import { requestStep, wifiStep } from "./wifi-step.js";

/** Columns that a line of the opening block leaves for its words. */
const ROOM = 70;

type Line = readonly [label: string, words: string];

/** The answer in at most eight lines of at most 80 columns: a label, then the words. */
export function channelGlance(report: ChannelReport, unit: LengthUnit): string[] {
  const { plan, survey } = report;
  const lines: Line[] = [
    ["Where", whereWords(survey)],
    ["Use", useWords(plan)],
    ["Link", linkWords(plan, unit)],
    ["Reach", reachWords(plan, unit)],
    ["Audience", audienceWords(plan, whenWords(survey))],
    ...(holds(plan) ? planningLines(report) : rescueLines(report)),
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

/** Named places, as many as fit, and the fullest crowd. */
export function whereWords({ places, fullestCrowd }: Survey): string {
  const named = places.filter((place) => place !== "").map((place) => printable(place, 40));
  const crowd =
    fullestCrowd === null ? "; crowd not said, taken as part" : `; fullest room scanned: ${fullestCrowd}`;
  if (named.length === 0) return `places not named${crowd}`;
  for (let shown = named.length; shown > 0; shown--) {
    const more = shown < named.length ? ` and ${named.length - shown} more` : "";
    const words = `${named.slice(0, shown).join(", ")}${more}${crowd}`;
    if (columnsOf(words) <= ROOM) return words;
  }
  return `${named.length} places${crowd}`;
}

function useWords(plan: ChannelPlan): string {
  const { recommended, backup, hopSet } = plan;
  if (hopSet !== null) return hopWords(plan, hopSet);
  if (recommended.channel === null) return `no radio channel: ${recommended.reason}`;
  const best = radioChannelWords(plan, recommended.channel);
  if (!holds(plan))
    return `NOTHING CLEAR; least bad ${best}${backup.channel === null ? "" : `, fallback radio ch ${backup.channel}`}`;
  const fallback =
    backup.channel === null
      ? `no fallback: ${backup.reason}`
      : `fallback ${radioChannelWords(plan, backup.channel)}`;
  return `${best}; ${fallback}`;
}

function hopWords(
  plan: ChannelPlan,
  { channels, excludedRanges }: NonNullable<ChannelPlan["hopSet"]>,
): string {
  const clear = holds(plan) ? "" : "NOTHING CLEAR; ";
  const [first] = excludedRanges;
  if (first === undefined) return `${clear}hop set of ${channels.length} frequencies`;
  const more = excludedRanges.length > 1 ? ` and ${excludedRanges.length - 1} more ranges` : "";
  return `${clear}hop set of ${channels.length}; keep out ${first.fromMhz}–${first.toMhz} MHz${more}`;
}

/** The plan works: what the fallback costs, then what to do. */
function planningLines(report: ChannelReport): Line[] {
  const { plan, survey } = report;
  const best = plan.ranking.find(({ channel }) => channel === plan.recommended.channel);
  const steps = [
    ...breachSteps(report),
    ...(best === undefined ? [] : [wifiStep(report) ?? `have Wi-Fi kept off ${best.centreMhz} MHz`]),
    ...(plan.setting.profile.generic ? ["enter your radio's figures"] : []),
    ...(survey.fullestCrowd === "full" ? [] : ["scan it full"]),
  ];
  return [
    plan.hopSet === null ? ["To move", movingWords(plan)] : ["Gain", gainWords(plan.hopSet)],
    ["Do", steps.length === 0 ? "nothing more than the survey's next look" : numbered(fitting(steps), 1)],
  ];
}

/** Nothing is clear: what to try, in order. */
function rescueLines(report: ChannelReport): Line[] {
  const { plan, survey } = report;
  const ask = requestStep(report) ?? `ask the network staff to clear ${dominantWords(plan, survey)}`;
  const steps = [
    ...breachSteps(report),
    ask,
    plan.link.reference?.receivedDbm === -Infinity ? "turn the antenna" : "antenna nearer",
    ...(plan.hopSet === null ? ["try a hopping profile"] : []),
    "do not sell this job as wireless",
  ];
  const first = fitting(steps);
  return [
    ["Do", numbered(first, 1)],
    ["", numbered(fitting(steps.slice(first.length)), first.length + 1)],
  ];
}

function breachSteps({ breachDb, regulation }: ChannelReport): string[] {
  const codes = regulation?.breaches.map(({ code }) => code) ?? [];
  return [
    ...(breachDb > 0 ? [`turn the power down ${Math.ceil(breachDb)} dB`] : []),
    ...(codes.includes("hop-count") ? ["hop over more frequencies"] : []),
    ...(codes.includes("dwell") ? ["send shorter packets"] : []),
  ];
}

/** As many steps as one line holds; at least one. */
function fitting(steps: readonly string[]): string[] {
  let count = steps.length;
  while (count > 1 && columnsOf(numbered(steps.slice(0, count), 1)) > ROOM) count--;
  return steps.slice(0, count);
}

function numbered(steps: readonly string[], first: number): string {
  return steps.map((step, index) => `${first + index} ${step}`).join("; ");
}

/** Whose Wi-Fi channel hurts most on what would be used: of a hop set, the one that leads on most frequencies. */
function dominantWords({ ranking, recommended, hopSet }: ChannelPlan, { emitters }: Survey): string {
  const used = ranking.filter(({ channel }) =>
    hopSet === null ? channel === recommended.channel : hopSet.channels.includes(channel),
  );
  const wifi = used.flatMap(({ contributors: [first] }) => {
    const source = emitters.find(({ emitter }) => emitter === first?.emitter);
    return source === undefined ? [] : [source.channel];
  });
  const counts = [
    ...rollup(
      wifi,
      (each) => each.length,
      (channel) => channel,
    ),
  ];
  const [most] = counts.sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  return most === undefined ? "the band" : `Wi-Fi ch ${most[0]}`;
}

/** What keeping ranges out gains. */
function gainWords({
  excludedRanges,
  clearAirRatio,
  marginDb,
  whole,
}: NonNullable<ChannelPlan["hopSet"]>): string {
  if (excludedRanges.length === 0) return "none to be had from keeping ranges out";
  const clear = `clear air ${sharePercent(whole.clearAirRatio)} to ${sharePercent(clearAirRatio)}`;
  return `${clear}, median margin ${fixed(whole.marginDb, 0)} to ${fixed(marginDb, 0)} dB`;
}

function movingWords({ setting }: ChannelPlan): string {
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
