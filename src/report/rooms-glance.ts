import { printable } from "../issues/index.js";
import type { PlannedSystem } from "../venue/index.js";
import { audienceWords } from "./audience-words.js";
import { glanceLine } from "./link-lines.js";
import { fixed } from "./number-format.js";
import { spareWords } from "./place-words.js";
import type { RoomsReport } from "./rooms-report.js";
import { limitsWords, shortName } from "./rooms-words.js";
import { columnsOf } from "./text-layout.js";

/** Columns that a line leaves for its words. */
const ROOM = 70;
const MOST_LINES = 8;

type Line = readonly [label: string, words: string];

/** The answer for all systems in at most eight lines of at most 80 columns. */
export function roomsGlance(report: RoomsReport): string[] {
  const { plan } = report;
  const weakest = [...plan.systems].sort((a, b) => leastDb(a) - leastDb(b) || 0)[0];
  const works = weakest === undefined || leastDb(weakest) >= 0;
  const head: Line[] = [
    ["Where", whereWords(report)],
    ["Use", useWords(report)],
    ...(weakest === undefined ? [] : [["Weakest", weakestWords(weakest)] as const]),
    ...proofLines(report),
    ...audienceLine(report),
    ...(works && plan.proof !== null ? [["To move", movingWords(report)] as const] : []),
  ];
  const lines: Line[] = [
    ...head,
    ...stepLines(report, MOST_LINES - 1 - head.length),
    ["Trust", trustWords(report)],
  ];
  return lines.map(([label, words]) => glanceLine(label, words));
}

/** Of a system's weakest receiver; one without a signal counts. */
export function leastDb({ lostReceivers, workingMarginDb }: PlannedSystem): number {
  return lostReceivers.length > 0 ? -Infinity : workingMarginDb;
}

const CROWD_WORDS = { empty: "an empty house", part: "part of a house", full: "a full house" } as const;

function whereWords({ venue, crowd, plan, rooms }: RoomsReport): string {
  const roomCount = new Set(rooms.filter(({ system }) => system !== null).map(({ room }) => room)).size;
  const systems = counted(plan.systems.length + plan.excluded.length, "system");
  return `${printable(venue.name, 28)}, ${CROWD_WORDS[crowd]}: ${systems} in ${counted(roomCount, "room")}`;
}

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? "" : "s"}`;
}

/** Every system's channel, as many as fit. */
function useWords({ plan }: RoomsReport): string {
  const each = plan.systems.map(({ system, channel, isHopping }) =>
    isHopping ? `${shortName(system.name)} hops` : `${shortName(system.name)} radio ch ${channel}`,
  );
  if (each.length === 0) return "no system can be planned: see below";
  const failing = plan.systems.some((one) => leastDb(one) < 0) ? "least bad: " : "";
  for (let shown = each.length; shown > 0; shown--) {
    const more = shown < each.length ? ` and ${each.length - shown} more` : "";
    const words = `${failing}${each.slice(0, shown).join(", ")}${more}`;
    if (columnsOf(words) <= ROOM) return words;
  }
  return counted(each.length, "system");
}

function weakestWords(one: PlannedSystem): string {
  const name = shortName(one.system.name);
  if (one.lostReceivers.length > 0)
    return `x FAILS: no signal at ${shortName(one.lostReceivers[0]!)} (${name}), in an antenna's null`;
  const { receiver, limit } = one.receivers[0]!;
  return `${spareWords(one.workingMarginDb)} at ${shortName(receiver)} (${name}); ${limitsWords(limit)}`;
}

function proofLines({ plan: { proof, systems } }: RoomsReport): Line[] {
  if (proof === null) return [];
  const { minMarginDb, boundDb, naiveMinMarginDb } = proof;
  const sure = proof.optimal
    ? "proved best"
    : `not proved, at most ${fixed(Math.ceil(boundDb - minMarginDb), 0)} dB off`;
  if (systems.filter(({ isHopping }) => !isHopping).length < 2) return [["Plan", sure]];
  const costDb = minMarginDb - naiveMinMarginDb;
  const naive = costDb < 0.05 ? "no worse" : costDb < 1 ? "under 1 dB worse" : `${fixed(costDb, 0)} dB worse`;
  return [["Plan", `${sure}; each on its own best: ${naive}`]];
}

function audienceLine({ rooms, plan, terms, venue, crowd }: RoomsReport): Line[] {
  const [worst] = rooms
    .flatMap(({ system, joint }) => (joint === null ? [] : [{ system, joint }]))
    .sort((a, b) => a.joint.workingMarginDb - b.joint.workingMarginDb);
  const of = plan.systems.find(({ system }) => system.name === worst?.system);
  if (worst === undefined || of === undefined) return [];
  const { frames, looks, receiver } = worst.joint;
  const { profile } = of.system;
  const setting = { profile, reliability: terms.reliability, eventMinutes: venue.eventMinutes };
  const when = `${shortName(receiver)}, ${crowd === "full" ? "full house" : crowd}`;
  const long = audienceWords({ frames, looks, setting }, when);
  const isShort = columnsOf(long) <= ROOM;
  return [["Audience", isShort ? long : audienceWords({ frames, looks, setting }, shortName(receiver))]];
}

function movingWords({ plan }: RoomsReport): string {
  const follow = new Set(
    plan.systems
      .filter(({ isHopping }) => !isHopping)
      .map(({ system }) => system.profile.receiversFollow.value),
  );
  if (follow.has("no")) return "a fallback needs a lift visit to each receiver of that system";
  return follow.has("unknown")
    ? "a fallback may need a lift visit: not known if receivers follow"
    : "receivers find a fallback by themselves";
}

/** What to do, in order, on as many lines as are left; what not to sell is told however many steps go before. */
function stepLines(report: RoomsReport, lineCount: number): Line[] {
  const steps = stepsOf(report).map((step, index) => `${index + 1} ${step}`);
  if (steps.length === 0) return [["Do", "nothing more than the survey's next look"]];
  let lines = packed(steps).slice(0, lineCount);
  const refusal = steps.find((step) => step.includes(REFUSAL));
  if (refusal !== undefined && !lines.some((line) => line.includes(REFUSAL)))
    lines = [...lines.slice(0, lineCount - 1), refusal];
  return lines.map((line, index) => [index === 0 ? "Do" : "", line]);
}

/** Steps one after another, as many on a line as fit. */
function packed(steps: readonly string[]): string[] {
  const lines: string[] = [];
  for (const step of steps) {
    const last = lines[lines.length - 1];
    if (last !== undefined && columnsOf(`${last}; ${step}`) <= ROOM)
      lines[lines.length - 1] = `${last}; ${step}`;
    else lines.push(step);
  }
  return lines;
}

const REFUSAL = "else do not sell";
/** Columns that leave the refusal room beside the step before it. */
const REFUSED_COLUMNS = 18;

/** The systems by name where the names are short, else their number. */
function refusedWords(failing: readonly PlannedSystem[]): string {
  const names = failing.map(({ system }) => shortName(system.name)).join(", ");
  const isShort = failing.length === 1 || columnsOf(names) <= REFUSED_COLUMNS;
  return isShort ? names : counted(failing.length, "system");
}

function stepsOf({ plan, reviews, request, venue, rooms, crowd }: RoomsReport): string[] {
  const unscanned = rooms.find(({ alone }) => alone.find((one) => one.crowd === crowd)?.weakest === null);
  const failing = plan.systems.filter((one) => leastDb(one) < 0);
  const isUnplaced = plan.systems.some(({ isCandidate }) => isCandidate) || plan.excluded.length > 0;
  return [
    ...plan.systems.flatMap(({ system }) => {
      const turnDownDb = reviews.get(system.name)?.judgement.turnDownDb ?? 0;
      return turnDownDb > 0 ? [`turn ${shortName(system.name)} down ${Math.ceil(turnDownDb)} dB`] : [];
    }),
    ...(request !== null && request.fixes.length > 0 ? ["hand over the Wi-Fi request"] : []),
    ...(unscanned === undefined ? [] : [`scan ${shortName(unscanned.room)}`]),
    ...(isUnplaced || failing.length > 0 ? ["antennas nearer: stillband place"] : []),
    ...(failing.some(({ isHopping }) => !isHopping) ? ["try a hopping profile"] : []),
    ...(failing.length > 0 ? [`${REFUSAL} ${refusedWords(failing)} as wireless`] : []),
    ...(venue.systems.some(({ profile }) => profile.generic) ? ["enter your radio's figures"] : []),
  ];
}

function trustWords({ survey, venue }: RoomsReport): string {
  if (venue.scans.length === 0) return "no scan: noise and what the file lists alone; scan it full";
  return `${survey.evidence.grade}; next look: ${survey.evidence.next}`;
}
