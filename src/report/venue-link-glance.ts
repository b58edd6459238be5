import { printable } from "../issues/index.js";
import type { ReceiverLink, SystemLinks } from "../venue/index.js";
import { audienceWords } from "./audience-words.js";
import { glanceLine } from "./link-lines.js";
import type { LengthUnit } from "./pen.js";
import { columnsOf } from "./text-layout.js";
import type { VenueLinkReport } from "./venue-link-report.js";
import { mendWords } from "./venue-link-words.js";

/** Systems that have a line of their own in the opening block. */
const MOST_SYSTEMS = 3;
const MOST_LINES = 8;
/** Columns that a line leaves for its words. */
const ROOM = 70;

type Line = readonly [label: string, words: string];

/** The answer in at most eight lines of at most 80 columns: the weakest systems first. */
export function venueLinkGlance(report: VenueLinkReport, unit: LengthUnit): string[] {
  const weakestFirst = [...report.systems].sort((a, b) => leastDb(a) - leastDb(b) || 0);
  const told = weakestFirst.slice(0, MOST_SYSTEMS);
  const moreCount = weakestFirst.length - told.length;
  const head: Line[] = [
    ["Where", whereWords(report)],
    ...told.map((one): Line => [printable(one.system.name, 9), systemWords(one)]),
    ...(moreCount > 0
      ? [["", `and ${moreCount} more ${moreCount === 1 ? "system" : "systems"}, as good or better`] as const]
      : []),
    ...audienceLine(report, weakestFirst),
  ];
  const lines = [
    ...head,
    ...doLines(steps(report, weakestFirst, unit), MOST_LINES - 1 - head.length),
    ["Trust", trustWords(report)],
  ];
  return lines.map(([label, words]) => glanceLine(label, words));
}

/** Working margin of a system's weakest receiver; a system that has none comes first. */
export function leastDb({ receivers }: SystemLinks): number {
  return receivers[0]?.judged.budget.workingMarginDb ?? Number.NEGATIVE_INFINITY;
}

const CROWD_WORDS = { empty: "an empty room", part: "part of a house", full: "a full house" } as const;

function whereWords({ venue, crowd, systems }: VenueLinkReport): string {
  const receiverCount = systems.reduce((sum, { receivers }) => sum + receivers.length, 0);
  const count = `${receiverCount} ${receiverCount === 1 ? "receiver" : "receivers"}`;
  return `${printable(venue.name, 30)}, ${CROWD_WORDS[crowd]}: ${count}`;
}

function systemWords(one: SystemLinks): string {
  const [weakest] = one.receivers;
  if (weakest === undefined) return `not judged: ${one.reason ?? "no receiver"}`;
  const from = one.isCandidate ? " from a candidate" : "";
  const on = (one.channel === null ? "" : ` on radio ch ${one.channel}`) + from;
  const name = printable(weakest.receiver.name, 12);
  const { workingMarginDb, verdict, limit } = weakest.judged.budget;
  const cause = limit === "range" ? "its own range" : "interference";
  const failCount = one.receivers.filter(({ judged }) => judged.budget.verdict === "fails").length;
  if (workingMarginDb === -Infinity) return `x FAILS${on}: no signal at ${name}, in an antenna's null`;
  const words =
    verdict === "fails"
      ? `x FAILS${on}: ${failCount} of ${one.receivers.length} short, ${name} by ${Math.ceil(-workingMarginDb - 1e-9)} dB`
      : `${MARKS[verdict]} ${verdict.toUpperCase()}${on}: ${Math.floor(workingMarginDb + 1e-9)} dB to spare at ${name}`;
  return `${words}; ${cause}`;
}

const MARKS = { fails: "x", thin: "!", sound: "o", ample: "*" } as const;

function audienceLine(
  { terms, crowd, venue }: VenueLinkReport,
  weakestFirst: readonly SystemLinks[],
): Line[] {
  const judged = weakestFirst.find(({ receivers }) => receivers.length > 0);
  if (judged === undefined) return [];
  const { frames, looks, receiver } = judged.receivers[0]!;
  const { reliability } = terms;
  const setting = { profile: judged.system.profile, reliability, eventMinutes: venue.eventMinutes };
  const at = printable(receiver.name, 12);
  const long = audienceWords({ frames, looks, setting }, `${at}, ${crowd === "full" ? "full house" : crowd}`);
  return [["Audience", columnsOf(long) <= ROOM ? long : audienceWords({ frames, looks, setting }, at)]];
}

/** What to do, in order. */
function steps(report: VenueLinkReport, weakestFirst: readonly SystemLinks[], unit: LengthUnit): string[] {
  return [
    ...breachSteps(report),
    ...weakestFirst.flatMap((one) => mendSteps(report, one, unit)),
    ...(weakestFirst.some(({ isSettled, system }) => !isSettled && system.profile.hopping === null) &&
    weakestFirst.length > 1
      ? ["stillband rooms: channels jointly"]
      : []),
    ...(report.venue.systems.some(({ profile }) => profile.generic) ? ["enter your radio's figures"] : []),
  ];
}

/** As many steps as so many lines hold. */
function doLines(all: readonly string[], lineCount: number): Line[] {
  if (all.length === 0) return [["Do", "nothing more than the survey's next look"]];
  const lines: string[] = [];
  all.forEach((step, index) => {
    const words = `${index + 1} ${step}`;
    const last = lines[lines.length - 1];
    if (last !== undefined && columnsOf(`${last}; ${words}`) <= ROOM)
      lines[lines.length - 1] = `${last}; ${words}`;
    else lines.push(words);
  });
  return lines.slice(0, lineCount).map((line, index) => [index === 0 ? "Do" : "", line]);
}

function breachSteps({ reviews, systems }: VenueLinkReport): string[] {
  return systems.flatMap(({ system }) => {
    const turnDownDb = reviews.get(system.name)?.judgement.turnDownDb ?? 0;
    return turnDownDb > 0 ? [`turn ${printable(system.name, 12)} down ${Math.ceil(turnDownDb)} dB`] : [];
  });
}

/** What helps the weakest receiver most, where the system isn't sound. */
function mendSteps({ words }: VenueLinkReport, one: SystemLinks, unit: LengthUnit): string[] {
  const { system } = one;
  const name = printable(system.name, 12);
  if (system.transmitter === null) return [`${name}: stillband place`];
  const weakest: ReceiverLink | undefined = one.receivers[0];
  if (weakest === undefined || weakest.judged.budget.workingMarginDb >= 6) return [];
  const [best] = weakest.mends;
  if (best === undefined) return [`${name}: stillband place`];
  const falls = best.workingMarginDb < 0 ? ", still fails" : "";
  return [`${name}: ${mendWords(best, words.antenna, unit, "whole")}${falls}`];
}

function trustWords({ survey, venue }: VenueLinkReport): string {
  if (venue.scans.length === 0) return "no scan: noise and what the file lists alone; scan it full";
  const { grade, next } = survey.evidence;
  return `${grade}; next look: ${next}`;
}
