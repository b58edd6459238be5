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

/** Sources in one line. */
export function sourcesLine(survey: Survey): string {
  const { emitterCount, bssCount, hiddenCount } = survey;
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

/** Issues worth a line, errors first; notes are left to JSON. */
export function issueLines(issues: readonly Issue[]): string[] {
  const order = { error: 0, warning: 1, note: 2 };
  return [...issues]
    .sort((a, b) => order[a.severity] - order[b.severity])
    .map((issue) => `${issue.severity}: ${formatIssue(issue)}`);
}
