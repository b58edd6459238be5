import { ascending } from "d3-array";
import { linkRow, profileTerms, referencePathModel } from "../propagation/index.js";
import { busyCells, passesIn, radioLine, SURVEY_GRID, spectrogram, sweptCells } from "../report/index.js";
import type { BusyCell, SourceHit, SurveyReport } from "../report/index.js";
import type { RadioProfile } from "../radio/index.js";
import { buildSurvey, CROWDS, toEmitters } from "../scan/index.js";
import type { BuildSurveyOptions, ScanImport, Survey, Sweep } from "../scan/index.js";
import { occupancy, rankChannels, receiverOf } from "../scorer/index.js";
import type { Emitter } from "../band/index.js";
import { crowdChange } from "./crowd-change.js";
import { crowdSummaries } from "./crowd-summaries.js";

const BUSY_SHARE_RATIO = 0.01;
/** The reference receiver, m. */
const REFERENCE_M = 20;

/**
 * Everything that the report of `survey` tells.
 * @param survey of those scans, where it is there already
 */
export function surveyReport(
  imports: readonly ScanImport[],
  options: BuildSurveyOptions,
  profile: RadioProfile,
  bandMhz?: readonly [lowMhz: number, highMhz: number],
  survey = buildSurvey(imports, options),
): SurveyReport {
  const sweeps = sweepsIn(imports);
  const thresholdDbm = spoilingDbm(profile);
  const centresMhz = profile.channels.map(({ centreMhz }) => centreMhz);
  const halfMhz = profile.bandwidthMhz.value / 2;
  const busy = (part: Survey, swept: readonly Sweep[]): BusyCell[] => busyOf(part, swept, thresholdDbm);
  const crowds = crowdSummaries(imports, options, busy);
  const wantedDbm = profile.channels.map(({ centreMhz }) => wantedAtDbm(profile, centreMhz));
  return {
    survey,
    occupancy: busy(survey, sweeps),
    thresholdDbm,
    busyShareRatio: BUSY_SHARE_RATIO,
    isSweptShareUpper: sweeps.some(({ buckets }) => buckets.some((bucket) => passesIn(bucket) > 1)),
    crowds,
    ...crowdChange(imports, options, { profile, wantedDbm, ...(bandMhz && { bandMhz }) }, crowds),
    spectrograms: sweeps.map((sweep) => spectrogram(sweep, SURVEY_GRID)),
    hits: sourceHits(toEmitters(survey), profile),
    profileName: profile.name,
    radioWords: radioLine(profile),
    usedMhz: [Math.min(...centresMhz) - halfMhz, Math.max(...centresMhz) + halfMhz],
  };
}

/** Local-mean level at the reference receiver, dBm. */
function wantedAtDbm(profile: RadioProfile, frequencyMhz: number): number {
  const terms = {
    ...profileTerms(profile),
    pathModel: referencePathModel,
    interferenceDbm: 0,
    fadeAllowanceDb: 0,
  };
  return linkRow({ ...terms, frequencyMhz }, REFERENCE_M).receivedDbm;
}

/** The power in one MHz, as scanned, that takes the reference receiver below its required C/I. */
function spoilingDbm(profile: RadioProfile): number {
  return wantedAtDbm(profile, 2442) - profile.requiredCiDb.value - receiverOf(profile).gainDb;
}

/** The sweeps by place, crowd and time, whatever the order of files. */
function sweepsIn(imports: readonly ScanImport[]): Sweep[] {
  const rank = ({ crowd }: Sweep): number => (crowd === null ? CROWDS.length : CROWDS.indexOf(crowd));
  return imports
    .flatMap(({ sweep }) => (sweep === null ? [] : [sweep]))
    .sort(
      (a, b) =>
        ascending(a.place, b.place) ||
        rank(a) - rank(b) ||
        ascending(a.firstMs ?? -Infinity, b.firstMs ?? -Infinity),
    );
}

function busyOf(survey: Survey, sweeps: readonly Sweep[], thresholdDbm: number): BusyCell[] {
  const cells = occupancy({
    emitters: toEmitters(survey),
    lowMhz: 2400,
    highMhz: 2484,
    thresholdDbm,
    busyShareRatio: BUSY_SHARE_RATIO,
  });
  const hasBeacons = survey.observationCount > 0 || sweeps.length === 0;
  return busyCells(cells, hasBeacons, sweptCells(sweeps, thresholdDbm, BUSY_SHARE_RATIO));
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
