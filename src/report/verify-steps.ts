import type { ReceiverCheck, SystemToday } from "../commissioning/index.js";
import { fixed } from "./number-format.js";
import { shortName } from "./rooms-words.js";
import type { VerifyReport } from "./verify-report.js";

/** What to do, in order, each in a few words: what moves many receivers first, then antennas, then the band. */
export function verifySteps(report: VerifyReport): string[] {
  const { readings, findings } = report;
  const checks = readings?.comparison.receivers ?? [];
  const lowRooms = (readings?.comparison.rooms ?? []).filter(({ verdict }) => verdict === "low");
  const unread = findings.filter(({ code }) => code === "not-read").length;
  return [
    ...changedSteps(report),
    ...lowRooms.map(
      ({ room }) => `${shortName(room)}: check the transmitter's power, feeder and antenna, then read again`,
    ),
    ...checks.flatMap(antennaStep),
    ...namedStep(checks, "not-heard", "power, channel and antenna of"),
    ...namedStep(checks, "low", "read again half a metre about, then antenna and canopy of"),
    ...thinStep(checks),
    ...(report.band?.comparison.systems ?? []).flatMap((today) => bandSteps(report, today)),
    ...(unread > 0 && checks.length > unread
      ? [`read the other ${unread === 1 ? "receiver" : `${unread} receivers`}`]
      : []),
    ...nextLooks(report),
  ];
}

function changedSteps({ plan, readings }: VerifyReport): string[] {
  if (plan === null || plan.comparison.inputs.length === 0) return [];
  const isHeldToPlan = readings?.predictedBy === "plan";
  return [`plan again: its inputs changed${isHeldToPlan ? " (held to the old plan here)" : ""}`];
}

/** The likelier cause first. */
function antennaStep({ receiver, suspicion }: ReceiverCheck): string[] {
  if (suspicion === null) return [];
  const name = shortName(receiver);
  const below = `${fixed(suspicion.belowNeighboursDb, 0)} dB under its neighbours`;
  return suspicion.causes[0] === "loose-antenna"
    ? [`tighten the antenna of ${name} (${below})`]
    : [`move the antenna of ${name} 6 cm, then tighten it (${below})`];
}

function namedStep(
  checks: readonly ReceiverCheck[],
  verdict: ReceiverCheck["verdict"],
  deed: string,
): string[] {
  const names = checks.filter((one) => one.verdict === verdict).map(({ receiver }) => shortName(receiver));
  if (names.length === 0) return [];
  const more = names.length > 3 ? ` and ${names.length - 3} more` : "";
  return [`${deed} ${names.slice(0, 3).join(", ")}${more}`];
}

/** Read as planned, and still without margin: a fault of the plan, where it had none there either. */
function thinStep(checks: readonly ReceiverCheck[]): string[] {
  const thin = checks.filter(
    ({ verdict, measuredMarginDb }) => verdict === "as-planned" && (measuredMarginDb ?? 0) < 0,
  );
  if (thin.length === 0) return [];
  const wasPlanned = thin.every(
    ({ measuredMarginDb, differenceDb }) => measuredMarginDb! - differenceDb! < 0,
  );
  const names = thin.map(({ receiver }) => shortName(receiver));
  const more = names.length > 3 ? ` and ${names.length - 3} more` : "";
  const why = wasPlanned ? " (nor had the plan)" : "";
  return [`no margin at ${names.slice(0, 3).join(", ")}${more}${why}: stillband place`];
}

function bandSteps(report: VerifyReport, today: SystemToday): string[] {
  const { system, verdict, bestChannel, channel, causes } = today;
  if (verdict === "still-best" || verdict === "as-good") return [];
  const [loudest] = causes;
  const asked =
    loudest === undefined ? [] : [`ask who runs ${sourceWords(report, loudest.emitter)} (${loudest.kind})`];
  const follow = report.channels.find((one) => one.system === system)?.receiversFollow;
  const visit = follow === "yes" ? "" : follow === "no" ? " (a lift visit)" : " (maybe a lift visit)";
  const move =
    bestChannel === null || bestChannel === channel
      ? []
      : [`move ${shortName(system)} to radio ch ${bestChannel}${visit}`];
  return [...asked, ...move];
}

/** A source by its Wi-Fi channel and what it calls itself. */
function sourceWords({ band }: VerifyReport, emitter: string): string {
  const source = band?.fresh.emitters.find((one) => one.emitter === emitter);
  if (source === undefined) return shortName(emitter);
  return `"${shortName(source.names[0] ?? source.emitter)}" on Wi-Fi ch ${source.channel}`;
}

function nextLooks({ readings, band }: VerifyReport): string[] {
  return [
    ...(readings === null ? ["read the receivers at trim (hang --sheet checks)"] : []),
    ...(band === null ? ["scan afresh where it was surveyed"] : []),
  ];
}
