import { ascending } from "d3-array";
import { ArgumentError } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import { CROWDS, crowdRank } from "./survey-crowd.js";
import { gradeEvidence, showsFullRoom } from "./evidence.js";
import { mergeNames } from "./merge-names.js";
import type { Reading } from "./reading.js";
import type { ScanImport } from "./scan-import.js";
import { ASSUMED_AIRTIME } from "./survey-airtime.js";
import type { AssumedAirtime } from "./survey-airtime.js";
import { surveyEmitter } from "./survey-emitter.js";
import { announcedSources } from "./survey-source.js";
import type { AnnouncedSource, FiledReading } from "./survey-source.js";
import type { OwnerMarks } from "./source-owner.js";
import { isMarkedAsBoth, isNamedBy } from "./source-owner.js";
import type { Survey, SurveyEmitter } from "./survey.js";
import { sweepLevels, sweepsOf, sweepSummary } from "./survey-sweeps.js";

/** How scans become a survey. */
export interface BuildSurveyOptions {
  /** Quantile of a source's readings at a place, 0..1; 0.9 unless given. */
  readonly levelQuantile?: number;
  readonly assumedAirtime?: AssumedAirtime;
  /** Names or addresses of the crew's own radios, left out and counted. */
  readonly ignore?: readonly string[];
  /** Names or addresses of the building's own sources, whatever their level. */
  readonly building?: readonly string[];
  /** Names or addresses of neighbours' sources, whatever their level. */
  readonly neighbour?: readonly string[];
  /** Was all 2.4 GHz equipment declared: does the evidence go beyond Wi-Fi without a sweep? */
  readonly equipmentListed?: boolean;
}

/**
 * All scans of a venue as one survey: radios told apart, their levels by place, their airtime, and how far
 * the evidence goes. Nothing depends on the order of files or rows.
 * @param imports what `readScan` gave, one for each file
 * @returns the survey; plain data
 * @throws {ArgumentError} when the quantile is not in 0..1
 * @example const full = await readScan("bssid,channel,signal_dbm\n02:00:00:00:00:01,6,-48\n", { source: "hall.csv" });
 * const survey = buildSurvey([full]);
 * [survey.emitterCount, survey.emitters[0].levelDbm]; // => [1, -48]
 * toEmitters(survey)[0].centreMhz; // => 2437
 */
export function buildSurvey(imports: readonly ScanImport[], options: BuildSurveyOptions = {}): Survey {
  const { levelQuantile = 0.9, assumedAirtime = ASSUMED_AIRTIME, ignore = [] } = options;
  const marks = { building: options.building ?? [], neighbour: options.neighbour ?? [] };
  if (!(levelQuantile >= 0 && levelQuantile <= 1))
    throw new ArgumentError("levelQuantile", "a number from 0 to 1", levelQuantile);
  const all = imports.flatMap(({ readings }, fileIndex) =>
    readings.map((reading): FiledReading => ({ fileIndex, reading })),
  );
  const ignored = ignoring(ignore);
  const filed = all.filter(({ reading }) => !ignored(reading));
  const sources = announcedSources(filed);
  const sweeps = sweepsOf(imports);
  const seen = [...filed.map(({ reading }) => reading), ...sweeps];
  const fullestRank = seen.reduce((fullest, { crowd }) => Math.max(fullest, crowdRank(crowd)), -1);
  const context = { levelQuantile, fullestRank, assumedAirtime, marks, moved: movedAddresses(sources) };
  const emitters = mergeNames(sources)
    .map((radio) => surveyEmitter(radio, context))
    .sort((a, b) => ascending(a.channel, b.channel) || ascending(a.emitter, b.emitter));
  const isHidden = [...hiddenByAddress(sources).values()];
  return {
    emitters,
    emitterCount: emitters.length,
    bssCount: isHidden.length,
    hiddenCount: isHidden.filter((hidden) => hidden).length,
    observationCount: filed.length,
    rejectedCount: total(imports, ({ rejectedCount }) => rejectedCount),
    outOfBandCount: total(imports, ({ outOfBandCount }) => outOfBandCount),
    ignoredCount: all.length - filed.length,
    places: [...new Set(seen.map(({ place }) => place))].sort(ascending),
    fullestCrowd: [...CROWDS].reverse().find((word) => seen.some(({ crowd }) => crowd === word)) ?? null,
    sweep: sweepSummary(sweeps),
    sweepLevels: sweepLevels(sweeps),
    evidence: gradeEvidence(filed, sweeps.some(showsFullRoom) || options.equipmentListed === true, sweeps),
    issues: [
      ...imports.flatMap(({ issues }) => issues),
      ...unmatched(ignore, all),
      ...markIssues(emitters, marks),
    ],
  };
}

/** Distinct addresses, or name × channel where there are none: is each nameless in every reading? */
function hiddenByAddress(sources: readonly AnnouncedSource[]): Map<string, boolean> {
  const hidden = new Map<string, boolean>();
  for (const { bssid, key, channel, readings } of sources) {
    const address = bssid ?? `${key}@${channel}`;
    hidden.set(address, (hidden.get(address) ?? true) && readings.every(({ ssid }) => ssid === ""));
  }
  return hidden;
}

function total(imports: readonly ScanImport[], count: (scan: ScanImport) => number): number {
  return imports.reduce((sum, scan) => sum + count(scan), 0);
}

function ignoring(ignore: readonly string[]): (reading: Reading) => boolean {
  const named = new Set(ignore);
  const addressed = new Set(ignore.map((word) => word.toLowerCase().replaceAll("-", ":")));
  return ({ ssid, bssid }) => (ssid !== "" && named.has(ssid)) || (bssid !== null && addressed.has(bssid));
}

function unmatched(ignore: readonly string[], all: readonly FiledReading[]): Issue[] {
  return ignore
    .filter((word) => !all.some(({ reading }) => ignoring([word])(reading)))
    .map((word) => ({
      code: "ignored",
      severity: "warning",
      source: "ignore",
      value: word,
      expected: HEARD,
      action: "value ignored",
    }));
}

/** Marks that name no source, and sources that two marks contradict. */
function markIssues(emitters: readonly SurveyEmitter[], marks: OwnerMarks): Issue[] {
  const wrong = { severity: "warning", action: "value ignored" } as const;
  const unheard = (["building", "neighbour"] as const).flatMap((source) =>
    marks[source]
      .filter((mark) => !emitters.some((emitter) => isNamedBy(emitter, mark)))
      .map((value): Issue => ({
        ...wrong,
        code: "ignored",
        source: `${source}-wifi`,
        value,
        expected: HEARD,
      })),
  );
  const both = emitters
    .filter((emitter) => isMarkedAsBoth(emitter, marks))
    .map(({ emitter: value }): Issue => ({
      ...wrong,
      code: "contradiction",
      source: "building-wifi",
      value,
      expected: "a source that is not marked as a neighbour too",
    }));
  return [...unheard, ...both];
}

const HEARD = "a name or address that some scan heard";

/** Addresses heard on more than one channel. */
function movedAddresses(sources: readonly AnnouncedSource[]): Set<string> {
  const seen = new Set<string>();
  const moved = new Set<string>();
  for (const { bssid } of sources) {
    if (bssid === null) continue;
    if (seen.has(bssid)) moved.add(bssid);
    seen.add(bssid);
  }
  return moved;
}
