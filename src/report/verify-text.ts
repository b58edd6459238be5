import type { PlanAssumption } from "../commissioning/index.js";
import { printable } from "../issues/index.js";
import { evidenceLines, rowsLine } from "./survey-lines.js";
import { marginSeries } from "./margin-series.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets, opening, pageText, section } from "./section.js";
import { wrapped } from "./text-layout.js";
import { verifyAssumptions, verifyCautions } from "./verify-assumptions.js";
import { verifyGlance } from "./verify-glance.js";
import type { VerifiedPlan, VerifiedReadings, VerifyReport, WatchedSystem } from "./verify-report.js";
import { verifySteps } from "./verify-steps.js";
import { changesTable, channelsTable, readingsTable, roomsTable } from "./verify-tables.js";
import { CHANNEL_FROM, signedTenth } from "./verify-words.js";

/** `stillband verify` for a terminal: the verdict, then receivers, rooms, channels and what changed. */
export function verifyText(report: VerifyReport, style: TextStyle): string {
  const { plan, readings, band, watch } = report;
  const steps = verifySteps(report);
  return pageText([
    opening(verifyGlance(report), style),
    ...(plan === null ? [] : [section("Against the plan file", style, bullets(planLines(plan), style))]),
    ...(steps.length === 0 ? [] : [section("To do, in order", style, bullets(steps, style))]),
    ...(readings === null ? [] : readingsSections(readings, style)),
    section("Planned channels in today's ranking", style, [
      ...channelsTable(report, style),
      ...wrapped(fromWords(report), style.columnCount),
      ...(band === null ? [] : wrapped(RANKING, style.columnCount)),
    ]),
    ...(band === null ? [] : bandSections(report, style)),
    ...(watch?.systems ?? []).map((one) => watchSection(one, style)),
    ...(watch === null || watch.caveats.length === 0
      ? []
      : [section("Of the series", style, bullets(watch.caveats.map(sentence), style))]),
    section("Assumed", style, bullets(verifyAssumptions(report), style)),
    section("Cautions", style, bullets(verifyCautions(report), style)),
  ]);
}

/** Who says which channels were planned. */
function fromWords({ channels }: VerifyReport): string {
  const words = (["plan", "venue-file", "surveyed-scans"] as const).flatMap((from) => {
    const names = channels.filter((one) => one.from === from && one.channel !== null);
    if (names.length === 0) return [];
    return [`${names.map(({ system }) => printable(system, 20)).join(", ")} by ${CHANNEL_FROM[from]}`];
  });
  return words.length === 0 ? "No channel was planned." : `Planned: ${words.join("; ")}.`;
}

const RANKING =
  "Each system's ranking is for its weakest receiver in the rooms scanned afresh, the other systems on their planned channels. best: the channel that leads, and by how many dB; up to 3 dB counts as good (assumed).";

function planLines({ source, record, comparison }: VerifiedPlan): string[] {
  const { inputs, assumptions, channels, receivers, isProgramChanged } = comparison;
  const made = record.madeAt === null ? "no date in it" : `made ${printable(record.madeAt, 30)}`;
  const moved = receivers.filter(({ predictedChangeDb }) => Math.abs(predictedChangeDb ?? 0) >= 0.05);
  const most = moved.reduce((far, { predictedChangeDb }) => Math.max(far, Math.abs(predictedChangeDb!)), 0);
  return [
    `${printable(source, 60)}: ${made}, program ${printable(record.program, 20)}${isProgramChanged ? ", another version than this one" : ""}.`,
    ...inputs.map(
      ({ input, kind, change }) => `Input ${change.toUpperCase()}: ${printable(input, 60)} (${kind}).`,
    ),
    ...assumptions.map(
      ({ name, then, now }) =>
        `Assumption changed: ${printable(name, 50)}, ${valueWords(then)}, now ${valueWords(now)}.`,
    ),
    ...channels.map(
      ({ system, thenChannel, nowChannel }) =>
        `${printable(system, 30)}: planned on radio ch ${thenChannel ?? "none"}; today's files would choose ${nowChannel ?? "none"}.`,
    ),
    ...(moved.length === 0
      ? []
      : [`${moved.length} receivers are predicted otherwise now, by up to ${fixed(most, 1)} dB.`]),
    ...(comparison.isLikeWithLike ? ["Same inputs, same assumptions: like is compared with like."] : []),
  ];
}

function valueWords(value: PlanAssumption["value"] | undefined): string {
  if (value === undefined) return "not there";
  return value === null ? "none" : `"${printable(String(value), 40)}"`;
}

function readingsSections(readings: VerifiedReadings, style: TextStyle): string[][] {
  const { comparison, read, groundCount, unpredicted } = readings;
  const strangers = [...new Set(comparison.strangers.map(({ receiver }) => receiver))];
  const used = read.readings.length - groundCount - comparison.strangers.length;
  const rows = [
    `${printable(read.source, 60)}: ${read.rowCount} rows in = ${used} used + ${comparison.strangers.length} of no receiver of the plan + ${groundCount} read on the ground + ${read.rejectedCount} rejected (a checklist's other checks among them).`,
    ...(strangers.length === 0
      ? []
      : [
          `No receiver of the plan: ${strangers
            .slice(0, 12)
            .map((name) => (name === null ? "no name" : printable(name, 30)))
            .join(", ")}${strangers.length > 12 ? " and more" : ""}.`,
        ]),
    ...(unpredicted.length === 0
      ? []
      : [
          `Nothing is predicted for: ${unpredicted
            .slice(0, 12)
            .map((name) => printable(name, 30))
            .join(
              ", ",
            )}${unpredicted.length > 12 ? " and more" : ""} (an antenna's true null, or not in the plan).`,
        ]),
  ];
  return [
    section("Receivers, what fails first", style, [
      ...readingsTable(readings, style),
      ...wrapped(RECEIVERS, style.columnCount),
    ]),
    section("Rooms as a whole, antenna suspects left out", style, roomsTable(readings, style)),
    section("Rows", style, bullets(rows, style)),
  ];
}

const RECEIVERS =
  "plan, interval, read in dBm; off = read - plan; spare = the plan's dB to spare, moved by off. interval: where one reading lies. Antenna: 10 dB or more under neighbours that agree.";

function bandSections({ band }: VerifyReport, style: TextStyle): string[][] {
  const { comparison, fresh, surveyed, rooms, crowds, caveats, roomlessCount } = band!;
  const counts = [
    `${comparison.newSources.length} new`,
    `${comparison.movedSources.length} on another Wi-Fi channel`,
    `${comparison.airtimeChanges.length} with other airtime`,
    `${comparison.levelChanges.length} louder or quieter by 6 dB`,
    `${comparison.goneSources.length} gone`,
  ];
  const evidence = [
    `Scanned afresh: ${rooms.map((room) => printable(room, 30)).join(", ")}; crowd ${crowds.map((crowd) => crowd ?? "not said").join(", ")}.`,
    ...caveats.map((caveat) => sentence(printable(caveat, 200))),
    ...(roomlessCount === 0
      ? []
      : [`${roomlessCount} fresh readings name a place that no room holds; they count for none.`]),
    ...evidenceLines(fresh),
    rowsLine(fresh),
  ];
  const causes = comparison.systems.flatMap(({ system, causes: own }) =>
    own.slice(0, 3).map(({ emitter, kind, inChannelDbm }) => {
      const source = fresh.emitters.find((one) => one.emitter === emitter);
      const name = source?.names[0] === undefined ? emitter : `"${printable(source.names[0], 32)}"`;
      return `${printable(system, 30)}: ${name} ${kind}, ${fixed(inChannelDbm, 0)} dBm in its channel.`;
    }),
  );
  return [
    section(
      "What changed on the band",
      style,
      surveyed === null
        ? wrapped("Nothing to compare with: no scan of the survey covers these rooms.", style.columnCount)
        : [...wrapped(`${counts.join(", ")}.`, style.columnCount), ...changesTable(band!, style)],
    ),
    ...(causes.length === 0 ? [] : [section("Behind the planned channels", style, bullets(causes, style))]),
    section("Evidence of the fresh scans", style, bullets(evidence, style)),
  ];
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

function watchSection({ system, channel, watch, weeksLeftCount }: WatchedSystem, style: TextStyle): string[] {
  const { series, weeklyDriftDb, weeklyDriftIntervalDb, trend, worst, firstFailure, failureCount } = watch;
  const drift =
    weeklyDriftDb === null || weeklyDriftIntervalDb === null
      ? "Too few dates for a drift: three are the least."
      : `Drift ${signedTenth(weeklyDriftDb)} dB a week (95 %: ${weeklyDriftIntervalDb.map(signedTenth).join(" to ")}): ${trend}.`;
  const end =
    firstFailure === null
      ? `It never failed; worst ${fixed(worst.marginDb, 1)} dB on ${worst.date}.`
      : `It would first have FAILED on ${firstFailure.date}, and on ${failureCount} of ${series.length} dates; worst ${fixed(worst.marginDb, 1)} dB on ${worst.date}.`;
  const left =
    weeksLeftCount === null
      ? ""
      : ` At this drift nothing is left in some ${fixed(weeksLeftCount, 0)} weeks.`;
  return section(`${printable(system, 30)}: to spare on radio ch ${channel} by date`, style, [
    ...marginSeries(series, style.columnCount),
    ...wrapped(`${drift} ${end}${left}`, style.columnCount),
  ]);
}
