import type { Figure, FigureStatus } from "./profile.js";
import { joined, knownEntries } from "./profile-keys.js";
import type { Report } from "./profile-report.js";
import { isMapping } from "./profile-report.js";
import type { ValueReader } from "./profile-values.js";
import { readText, wordOf } from "./profile-values.js";

/** Source of a figure that the user gave without one. */
export const YOUR_FIGURE = "your own figure";

/** Where a figure may come from. */
export const FIGURE_STATUSES: readonly FigureStatus[] = ["standard", "assumed", "yours"];

/**
 * One figure: `{ value, status?, source? }`, or the bare value. What names no status is the user's own.
 * @returns undefined when a mistake was reported
 */
export function readFigure<T>(
  raw: unknown,
  path: string,
  readValue: ValueReader<T>,
  report: Report,
): Figure<T> | undefined {
  if (!isMapping(raw) || !Object.hasOwn(raw, "value")) {
    const value = readValue(raw, path, report);
    return value === undefined ? undefined : { value, status: "yours", source: YOUR_FIGURE };
  }
  const entries = knownEntries(raw, ["value", "status", "source"], path, report);
  const value = readValue(entries.get("value"), joined(path, "value"), report);
  const origin = readOrigin(entries, path, report);
  return value === undefined || origin === undefined ? undefined : { value, ...origin };
}

/** Status and source, either of which may be absent. */
export function readOrigin(
  entries: ReadonlyMap<string, unknown>,
  path: string,
  report: Report,
): Pick<Figure, "status" | "source"> | undefined {
  const status = entries.has("status")
    ? wordOf(FIGURE_STATUSES)(entries.get("status"), joined(path, "status"), report)
    : "yours";
  const source = entries.has("source")
    ? readText(entries.get("source"), joined(path, "source"), report)
    : YOUR_FIGURE;
  return status === undefined || source === undefined ? undefined : { status, source };
}
