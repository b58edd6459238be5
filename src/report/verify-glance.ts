import { glanceLine } from "./link-lines.js";
import { fixed } from "./number-format.js";
import { shortName } from "./rooms-words.js";
import { columnsOf } from "./text-layout.js";
import type { VerifyFinding, VerifyReport } from "./verify-report.js";
import { verifySteps } from "./verify-steps.js";
import { fittingWords, isPassed, signedDb, todayWords } from "./verify-words.js";

/** Columns that a line leaves for its words. */
const ROOM = 70;
const MOST_LINES = 8;

type Line = readonly [label: string, words: string];

/** Passes or fails, which receivers and rooms, what to do, how far to trust it: at most eight lines. */
export function verifyGlance(report: VerifyReport): string[] {
  const head: Line[] = [
    ["Verdict", verdictWords(report)],
    ...receiverLine(report),
    ...roomLine(report),
    ...channelLine(report),
    ...driftLine(report),
    ...planLine(report),
  ];
  const lines = [
    ...head,
    ...doLines(verifySteps(report), MOST_LINES - 1 - head.length),
    ["Trust", trustWords(report)],
  ];
  return (lines as Line[]).map(([label, words]) => glanceLine(label, words));
}

function verdictWords(report: VerifyReport): string {
  const { findings, venue, readings, band, plan } = report;
  const name = shortName(venue.name);
  const looked = [
    ...(readings === null ? [] : ["readings"]),
    ...(band === null ? [] : ["band"]),
    ...(plan === null ? [] : ["plan file"]),
  ].join(", ");
  if (isPassed(report)) return `o PASSES, ${name}: ${looked} as planned${warned(findings)}`;
  const failing = findings.filter(({ severity }) => severity === "failure");
  const counts = [
    counted(
      distinct(
        failing.filter(({ code }) => !isOfBand(code)),
        "receiver",
      ),
      "receiver",
    ),
    counted(failing.filter(({ code }) => code === "room-low").length, "room"),
    counted(
      distinct(
        failing.filter(({ code }) => isOfBand(code)),
        "system",
      ),
      "planned channel",
    ),
  ].filter((words) => words !== null);
  return `x FAILS, ${name}: ${counts.join(", ")}`;
}

function isOfBand(code: VerifyFinding["code"]): boolean {
  return code.startsWith("channel-");
}

function distinct(findings: readonly VerifyFinding[], key: "receiver" | "system"): number {
  return new Set(findings.flatMap((finding) => finding[key] ?? [])).size;
}

function counted(count: number, one: string): string | null {
  return count === 0 ? null : `${count} ${one}${count === 1 ? "" : "s"}`;
}

function warned(findings: readonly VerifyFinding[]): string {
  return findings.length === 0 ? "" : `; ${counted(findings.length, "thing")} to note`;
}

function receiverLine({ readings }: VerifyReport): Line[] {
  if (readings === null) return [];
  const { receivers } = readings.comparison;
  const of = (verdict: string): string[] =>
    receivers.filter((one) => one.verdict === verdict).map(({ receiver }) => shortName(receiver));
  const said: readonly (readonly [readonly string[], string])[] = [
    [of("antenna-suspect"), "antenna suspect"],
    [of("not-heard"), "not heard"],
    [of("low"), "low"],
  ];
  const bad = said.flatMap(([names, what]) => (names.length === 0 ? [] : [`${namesOf(names)} ${what}`]));
  const readCount = receivers.filter(({ readingCount }) => readingCount > 0).length;
  const fine = `${of("as-planned").length + of("high").length} of ${readCount} read not low`;
  const unread = receivers.length - readCount;
  const rest = unread === 0 ? fine : `${fine}, ${unread} not read`;
  return [["Receivers", fittingPair(bad.join("; "), rest)]];
}

function namesOf(names: readonly string[]): string {
  const shown = names.slice(0, 3).join(", ");
  return names.length > 3 ? `${shown} and ${names.length - 3} more` : shown;
}

function fittingPair(first: string, second: string): string {
  if (first === "") return second;
  return columnsOf(`${first}; ${second}`) <= ROOM ? `${first}; ${second}` : first;
}

function roomLine({ readings }: VerifyReport): Line[] {
  if (readings === null) return [];
  const words = readings.comparison.rooms.map(({ room, verdict, biasDb }) => {
    const name = shortName(room);
    if (biasDb === null) return `${name} not judged`;
    if (verdict === "low") return `x ${name} LOW as a whole, ${signedDb(biasDb)}`;
    return verdict === "high" ? `! ${name} high, ${signedDb(biasDb)}` : `${name} ${signedDb(biasDb)}`;
  });
  const worstFirst = [...words].sort((a, b) => Number(b.startsWith("x")) - Number(a.startsWith("x")));
  return [["Rooms", fittingWords(worstFirst, ROOM, "rooms")]];
}

function channelLine({ band, channels }: VerifyReport): Line[] {
  if (band === null) return [];
  const order = ["fails", "not-ranked", "beaten", "as-good", "still-best"];
  const judged = [...band.comparison.systems].sort(
    (a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict),
  );
  const unjudged = channels.filter(({ system }) => judged.every((one) => one.system !== system));
  const words = [
    ...judged.map(todayWords),
    ...(unjudged.length === 0
      ? []
      : [`not judged: ${unjudged.map(({ system }) => shortName(system)).join(", ")}`]),
  ];
  return [["Channels", fittingWords(words, ROOM, "systems")]];
}

function driftLine({ watch }: VerifyReport): Line[] {
  const worst = [...(watch?.systems ?? [])].sort(
    (a, b) => a.watch.worst.marginDb - b.watch.worst.marginDb,
  )[0];
  if (worst === undefined) return [];
  const { watch: its, system, weeksLeftCount } = worst;
  const { weeklyDriftDb, trend, firstFailure, series } = its;
  const drift =
    weeklyDriftDb === null
      ? `${signedDb(its.changeDb)} over ${series.length} dates`
      : trend === "steady"
        ? `steady over ${series.length} dates`
        : `${signedDb(weeklyDriftDb)} a week`;
  const end =
    firstFailure !== null
      ? `first failed ${firstFailure.date}`
      : weeksLeftCount === null
        ? `worst ${fixed(its.worst.marginDb, 0)} dB on ${its.worst.date}`
        : `gone in ${Math.max(1, Math.floor(weeksLeftCount))} weeks`;
  return [["Drift", `${shortName(system)} ${drift}; ${end}`]];
}

function planLine({ plan }: VerifyReport): Line[] {
  if (plan === null) return [];
  const { inputs, assumptions, isProgramChanged } = plan.comparison;
  const changed = inputs.map(({ input, change }) => `${shortName(input)} ${change}`);
  if (changed.length > 0) return [["Plan", `! ${fittingWords(changed, ROOM - 2, "inputs")}`]];
  if (assumptions.length > 0)
    return [["Plan", `! same inputs, ${counted(assumptions.length, "assumption")!} changed: see below`]];
  return [
    ["Plan", isProgramChanged ? "! same inputs, another program version" : "same inputs and assumptions"],
  ];
}

/** As many steps as so many lines hold. */
function doLines(steps: readonly string[], lineCount: number): Line[] {
  const numbered = (steps.length === 0 ? ["keep this with the hand-over papers"] : steps).map(
    (step, index) => (steps.length === 0 ? step : `${index + 1} ${step}`),
  );
  const lines: string[] = [];
  for (const step of numbered) {
    const last = lines[lines.length - 1];
    if (last !== undefined && columnsOf(`${last}; ${step}`) <= ROOM)
      lines[lines.length - 1] = `${last}; ${step}`;
    else lines.push(step);
  }
  return lines.slice(0, Math.max(1, lineCount)).map((line, index) => [index === 0 ? "Do" : "", line]);
}

function trustWords({ readings, band }: VerifyReport): string {
  const basis = readings === null ? "" : basisWords(readings.forecasts.map(({ basis: of }) => of));
  if (band === null)
    return basis === "" ? "papers alone: nothing was measured" : `${basis}; next look: a fresh scan`;
  const { grade, next } = band.fresh.evidence;
  return fittingPair(`fresh scan ${grade}; next look: ${next}`, basis === "" ? "no readings" : basis);
}

function basisWords(bases: readonly (string | null)[]): string {
  if (bases.every((basis) => basis === null)) return "held to the plan file";
  if (bases.every((basis) => basis === "fitted")) return "intervals fitted on site";
  return bases.some((basis) => basis === "fitted")
    ? "intervals part fitted"
    : "intervals assumed: fit a walk";
}
