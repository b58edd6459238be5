import { printable } from "../issues/index.js";
import type { SystemLinks } from "../venue/index.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import type { ReceiverForecast } from "./receiver-forecast.js";
import { clipped, tableLines, wrapped } from "./text-layout.js";
import type { VenueLinkReport } from "./venue-link-report.js";

/** What the boxes of a system will read, where their room's model was fitted on site; nothing where none was. */
export function fittedLines(
  { receivers }: SystemLinks,
  { forecasts, receiver }: Pick<VenueLinkReport, "forecasts" | "receiver">,
  style: TextStyle,
): string[] {
  const fitted = receivers.flatMap((one) => {
    const forecast = forecasts.get(one.receiver.name);
    const isAsked = receiver === null || receiver === one.receiver.name;
    return isAsked && forecast?.basis === "fitted" ? [forecast] : [];
  });
  if (fitted.length === 0) return [];
  const rows = fitted.map((one) => [
    clipped(printable(one.receiver, 60), 14),
    clipped(printable(one.room, 60), 12),
    fixed(one.predictedDbm, 1),
    intervalWords(one.intervalDbm),
    intervalWords(one.pathLossIntervalDb!),
    one.isExtrapolated ? "not walked so far" : "",
  ]);
  const columns = [
    { head: "receiver", align: "left" },
    { head: "room", align: "left" },
    { head: "reads dBm", align: "right" },
    { head: "95 % of readings", align: "right" },
    { head: "path loss dB", align: "right" },
    { head: "", align: "left" },
  ] as const;
  return [...tableLines(columns, rows, style.columnCount), ...wrapped(FITTED, style.columnCount)];
}

/** @example intervalWords([-72.34, -48.1]); // => "-72.3 to -48.1" */
export function intervalWords([low, high]: ReceiverForecast["intervalDbm"]): string {
  return `${fixed(low, 1)} to ${fixed(high, 1)}`;
}

const FITTED =
  "Fitted on site: a single reading at the box, fading of its spot counted; path loss of one averaged over fading. In place of a generic sigma; walls, antennas and canopy as stated.";
