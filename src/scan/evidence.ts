import type { FiledReading } from "./survey-source.js";
import type { Evidence } from "./survey.js";
import type { Sweep } from "./sweep.js";

const HALF_HOUR_MS = 30 * 60_000;

/** What was looked at, counted for the grade. */
interface Looks {
  readonly lookCount: number;
  readonly spanMs: number;
  readonly placeCount: number;
  readonly sawFull: boolean;
  readonly sawPart: boolean;
  readonly beyondWifi: boolean;
  readonly sawSweep: boolean;
}

/** Is it a power sweep of the full room, in levels that mean something? */
export function showsFullRoom({ crowd, relative }: Sweep): boolean {
  return crowd === "full" && !relative;
}

/**
 * How far the evidence goes. A look is one distinct file × time stamp; of a power sweep, one stretch of time
 * that it was kept for. `solid`: three or more over at least 30
 * minutes, one of them in a full room, at two or more places, non-Wi-Fi looked for too; `partial`: two or
 * more, or one in a part or full room; `one-look`: anything less. A blank crowd counts for nothing here.
 * @param beyondWifi was non-Wi-Fi looked for: a power sweep in the full room, or a declared list of equipment
 */
export function gradeEvidence(
  filed: readonly FiledReading[],
  beyondWifi: boolean,
  sweeps: readonly Sweep[] = [],
): Evidence {
  const looks = countLooks(filed, beyondWifi, sweeps);
  const { lookCount, spanMs, placeCount, sawFull, sawPart } = looks;
  const solid = lookCount >= 3 && spanMs >= HALF_HOUR_MS && sawFull && placeCount >= 2 && beyondWifi;
  const grade = solid ? "solid" : lookCount >= 2 || sawFull || sawPart ? "partial" : "one-look";
  return { grade, reasons: reasonsFor(looks), next: nextLook(looks) };
}

function countLooks(filed: readonly FiledReading[], beyondWifi: boolean, sweeps: readonly Sweep[]): Looks {
  const stamps = new Set(filed.map(({ fileIndex, reading }) => `${fileIndex} ${reading.timeMs}`));
  const sweepTimes = sweeps.flatMap(({ firstMs, lastMs }) => [firstMs, lastMs]);
  const times = [...filed.map(({ reading }) => reading.timeMs), ...sweepTimes].filter(
    (timeMs) => timeMs !== null,
  );
  const earliest = times.reduce((a, b) => Math.min(a, b), Infinity);
  const latest = times.reduce((a, b) => Math.max(a, b), -Infinity);
  const seen = [...filed.map(({ reading }) => reading), ...sweeps];
  return {
    lookCount: sweeps.reduce((sum, { buckets }) => sum + buckets.length, stamps.size),
    spanMs: times.length === 0 ? 0 : latest - earliest,
    placeCount: new Set(seen.map(({ place }) => place).filter((place) => place !== "")).size,
    sawFull: seen.some(({ crowd }) => crowd === "full"),
    sawPart: seen.some(({ crowd }) => crowd === "part"),
    beyondWifi,
    sawSweep: sweeps.some(({ relative }) => !relative),
  };
}

function reasonsFor(looks: Looks): string[] {
  const { lookCount, spanMs, placeCount, sawFull, sawPart, beyondWifi, sawSweep } = looks;
  const crowd = sawFull
    ? "one in a full room"
    : sawPart
      ? "none in a full room, one part full"
      : "none in a full or part-full room";
  return [
    `${lookCount} ${lookCount === 1 ? "look" : "looks"} over ${spanWords(spanMs)} (3 over 30 min wanted)`,
    crowd,
    `${placeCount} named ${placeCount === 1 ? "place" : "places"} (2 wanted)`,
    beyondWifi
      ? "looked for more than Wi-Fi"
      : sawSweep
        ? "looked for more than Wi-Fi, but not in a full room"
        : "Wi-Fi beacons only: blind to microphones, intercoms, cameras, hearing assistance and video links at 2.4 GHz",
  ];
}

function spanWords(spanMs: number): string {
  const minutes = Math.round(spanMs / 60_000);
  if (minutes < 120) return `${minutes} min`;
  return minutes < 2880 ? `${Math.round(minutes / 60)} h` : `${Math.round(minutes / 1440)} days`;
}

function nextLook({ lookCount, spanMs, placeCount, sawFull, beyondWifi }: Looks): string {
  if (lookCount === 0) return "scan the room";
  if (!sawFull) return "scan again with the room full";
  if (!beyondWifi) return "a power sweep with the room full";
  if (placeCount < 2) return "scan at a second place, one of them at trim height";
  if (lookCount < 3 || spanMs < HALF_HOUR_MS) return "scan again half an hour later";
  return "scan again at hand-over and at the first full event";
}
