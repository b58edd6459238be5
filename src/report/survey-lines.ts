import { formatIssue } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import type { Survey } from "../scan/index.js";
import { fixed } from "./number-format.js";

/** Rows in = used + rejected + out of band (+ left out on request), in one line. */
export function rowsLine(survey: Survey): string {
  const { observationCount, rejectedCount, outOfBandCount, ignoredCount } = survey;
  const sweptCount = survey.sweep?.rowCount ?? 0;
  const rowCount = observationCount + sweptCount + rejectedCount + outOfBandCount + ignoredCount;
  const ignored = ignoredCount === 0 ? "" : ` + ${ignoredCount} left out by --ignore`;
  return `Rows: ${rowCount} in = ${observationCount + sweptCount} used + ${rejectedCount} rejected + ${outOfBandCount} out of band${ignored}.`;
}

/** The power sweeps, where there are any. */
export function sweepLines({ sweep }: Survey): string[] {
  if (sweep === null) return [];
  const { passCount, startMhz, stopMhz, resolutionBandwidthMhz, resolutionBandwidthAssumed } = sweep;
  const assumed = resolutionBandwidthAssumed ? " (assumed)" : "";
  const holes = sweep.invalidCellCount === 0 ? "" : `, ${sweep.invalidCellCount} levels unreadable`;
  return [
    `Power sweeps: ${passCount} ${passCount === 1 ? "pass" : "passes"} over ${fixed(startMhz, 0)}–${fixed(stopMhz, 0)} MHz, resolution bandwidth ${fixed(resolutionBandwidthMhz * 1000, 0)} kHz${assumed}${holes}.`,
  ];
}

/** What is on the air, in the few words of the opening block. */
export function onAirWords(survey: Survey): string {
  const { emitterCount, bssCount, hiddenCount, sweep } = survey;
  const passes = sweep === null ? "" : counted(sweep.passCount, "pass", "passes");
  if (isSweepAlone(survey)) return `power sweep only: ${passes}; no beacon list`;
  const swept = sweep === null ? "" : `; power sweep: ${passes}`;
  const sources = counted(emitterCount, "radio source", "radio sources");
  return `${sources} with ${counted(bssCount, "address", "addresses")}, ${hiddenCount} hidden${swept}`;
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Power sweeps and nothing else: no source announced itself because none was listened for. */
export function isSweepAlone({ sweep, observationCount, ignoredCount }: Survey): boolean {
  return sweep !== null && observationCount + ignoredCount === 0;
}

/** Sources in one line. */
export function sourcesLine(survey: Survey): string {
  const { emitterCount, bssCount, hiddenCount } = survey;
  if (isSweepAlone(survey)) return "No beacon list was read: what is on the air has no names here.";
  const moved = survey.emitters.filter((source) => source.moved).length;
  const movedWords = moved === 0 ? "" : ` ${moved} sources were heard on another channel too.`;
  return `${emitterCount} radio sources announce ${bssCount} network addresses, ${hiddenCount} of them hidden.${movedWords}`;
}

/** The grade, its reasons, and the next look. */
export function evidenceLines({ evidence }: Survey): string[] {
  return [
    `${evidence.grade}: ${evidence.reasons.join("; ")}.`,
    `Next look that would help most: ${evidence.next}.`,
  ];
}

/** Issues, a line each, errors first; what would be told in the same words is told once. */
export function issueLines(issues: readonly Issue[]): string[] {
  const order = { error: 0, warning: 1, note: 2 };
  const lines = [...issues]
    .sort((a, b) => order[a.severity] - order[b.severity])
    .map((issue) => `${issue.severity}: ${formatIssue(issue)}`);
  return [...new Set(lines)];
}
