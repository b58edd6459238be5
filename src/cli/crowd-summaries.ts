import type { BusyCell, CrowdSummary } from "../report/index.js";
import { meanBusyRatio } from "../report/index.js";
import { buildSurvey, CROWDS } from "../scan/index.js";
import type { BuildSurveyOptions, Crowd, ScanImport, Survey, Sweep } from "../scan/index.js";

/** The scans of one state of the room: of each file the readings and the sweep that name it. */
export function scansOfCrowd(imports: readonly ScanImport[], crowd: Crowd | null): ScanImport[] {
  return imports.map((scan) => ({
    ...scan,
    sweep: scan.sweep !== null && scan.sweep.crowd === crowd ? scan.sweep : null,
    readings: scan.readings.filter((reading) => reading.crowd === crowd),
  }));
}

/** Each state of the room that some scan shows, emptiest first, those that name none last. */
export function crowdSummaries(
  imports: readonly ScanImport[],
  options: BuildSurveyOptions,
  busy: (survey: Survey, sweeps: readonly Sweep[]) => BusyCell[],
): CrowdSummary[] {
  return [...CROWDS, null].flatMap((crowd): CrowdSummary[] => {
    const part = scansOfCrowd(imports, crowd);
    const survey = buildSurvey(part, options);
    const sweeps = part.flatMap(({ sweep }) => (sweep === null ? [] : [sweep]));
    if (survey.observationCount === 0 && sweeps.length === 0) return [];
    const firsts = [
      ...survey.emitters.map(({ firstSeen }) => firstSeen),
      ...sweeps.map(({ firstMs }) => iso(firstMs)),
    ];
    const lasts = [
      ...survey.emitters.map(({ lastSeen }) => lastSeen),
      ...sweeps.map(({ lastMs }) => iso(lastMs)),
    ];
    const known = (times: readonly (string | null)[]): string[] =>
      times.filter((time) => time !== null).sort();
    return [
      {
        crowd,
        observationCount: survey.observationCount,
        passCount: survey.sweep?.passCount ?? 0,
        emitterCount: survey.emitterCount,
        busyRatio: meanBusyRatio(busy(survey, sweeps)),
        firstSeen: known(firsts)[0] ?? null,
        lastSeen: known(lasts).pop() ?? null,
      },
    ];
  });
}

function iso(timeMs: number | null): string | null {
  return timeMs === null ? null : new Date(timeMs).toISOString();
}
