import { linkRow, profileTerms, referencePathModel } from "../propagation/index.js";
import { radioLine } from "../report/index.js";
import type { CrowdSummary, SourceHit, SurveyReport } from "../report/index.js";
import type { RadioProfile } from "../radio/index.js";
import { buildSurvey, CROWDS, toEmitters } from "../scan/index.js";
import type { BuildSurveyOptions, ScanImport } from "../scan/index.js";
import { occupancy, rankChannels, receiverOf } from "../scorer/index.js";
import type { OccupancyCell } from "../scorer/index.js";
import type { Emitter } from "../band/index.js";

const BUSY_SHARE_RATIO = 0.01;
/** The reference receiver, m. */
const REFERENCE_M = 20;

/** Everything that the report of `survey` tells. */
export function surveyReport(
  imports: readonly ScanImport[],
  options: BuildSurveyOptions,
  profile: RadioProfile,
): SurveyReport {
  const survey = buildSurvey(imports, options);
  const emitters = toEmitters(survey);
  const thresholdDbm = spoilingDbm(profile);
  const centresMhz = profile.channels.map(({ centreMhz }) => centreMhz);
  const halfMhz = profile.bandwidthMhz.value / 2;
  return {
    survey,
    occupancy: occupancyOf(emitters, thresholdDbm),
    thresholdDbm,
    busyShareRatio: BUSY_SHARE_RATIO,
    crowds: crowdSummaries(imports, options, thresholdDbm),
    hits: sourceHits(emitters, profile),
    profileName: profile.name,
    radioWords: radioLine(profile),
    usedMhz: [Math.min(...centresMhz) - halfMhz, Math.max(...centresMhz) + halfMhz],
  };
}

/** The power in one MHz, as scanned, that takes the reference receiver below its required C/I. */
function spoilingDbm(profile: RadioProfile): number {
  const terms = {
    ...profileTerms(profile),
    pathModel: referencePathModel,
    interferenceDbm: 0,
    fadeAllowanceDb: 0,
  };
  const { receivedDbm } = linkRow({ ...terms, frequencyMhz: 2442 }, REFERENCE_M);
  return receivedDbm - profile.requiredCiDb.value - receiverOf(profile).gainDb;
}

function occupancyOf(emitters: readonly Emitter[], thresholdDbm: number): OccupancyCell[] {
  return occupancy({
    emitters,
    lowMhz: 2400,
    highMhz: 2484,
    thresholdDbm,
    busyShareRatio: BUSY_SHARE_RATIO,
  });
}

/** The channel in which each source is strongest, among those where it is above the noise − 10 dB. */
function sourceHits(emitters: readonly Emitter[], profile: RadioProfile): SourceHit[] {
  const { noiseFloorDbm } = receiverOf(profile);
  const best = new Map<string, { channel: number; inChannelDbm: number }>();
  const { ranking } = rankChannels({ emitters, profile, wantedDbm: -60 });
  for (const { channel, contributors } of [...ranking].sort((a, b) => a.channel - b.channel))
    for (const { emitter, inChannelDbm } of contributors)
      if (inChannelDbm > (best.get(emitter)?.inChannelDbm ?? -Infinity) + 1e-9)
        best.set(emitter, { channel, inChannelDbm });
  return emitters.map(({ id }) => {
    const hit = best.get(id);
    if (hit === undefined) return { emitter: id, channel: null, inChannelDbm: null, aboveNoiseDb: null };
    return { emitter: id, ...hit, aboveNoiseDb: hit.inChannelDbm - noiseFloorDbm };
  });
}

function crowdSummaries(
  imports: readonly ScanImport[],
  options: BuildSurveyOptions,
  thresholdDbm: number,
): CrowdSummary[] {
  return [...CROWDS, null].flatMap((crowd): CrowdSummary[] => {
    const part = imports.map((scan) => ({
      ...scan,
      sweep: null,
      readings: scan.readings.filter((reading) => reading.crowd === crowd),
    }));
    const { observationCount, emitterCount, emitters, ...survey } = buildSurvey(part, {
      ...options,
      ignore: options.ignore ?? [],
    });
    if (observationCount === 0) return [];
    const cells = occupancyOf(
      toEmitters({ observationCount, emitterCount, emitters, ...survey }),
      thresholdDbm,
    );
    const seen = emitters
      .map(({ firstSeen }) => firstSeen)
      .filter((time) => time !== null)
      .sort();
    const left = emitters
      .map(({ lastSeen }) => lastSeen)
      .filter((time) => time !== null)
      .sort();
    return [
      {
        crowd,
        observationCount,
        emitterCount,
        busyRatio: cells.reduce((sum, { busyRatio }) => sum + busyRatio, 0) / cells.length,
        firstSeen: seen[0] ?? null,
        lastSeen: left[left.length - 1] ?? null,
      },
    ];
  });
}
