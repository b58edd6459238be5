import { printable } from "../issues/index.js";
import type { SurveyEmitter } from "../scan/index.js";
import type { VenueFix } from "../venue/index.js";
import { sourceName } from "./channel-tables.js";
import { dB, fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { tableLines } from "./text-layout.js";

/** Sources of a survey by id. */
export type Sources = ReadonlyMap<string, SurveyEmitter>;

/** Rows of radios that text shows; JSON has them all. */
const MOST_FIXES = 12;

/** The radios to fix, each with what it costs if it moves; nothing where there is none. */
export function requestFixTable(fixes: readonly VenueFix[], sources: Sources, style: TextStyle): string[] {
  if (fixes.length === 0) return [];
  const rows = fixes.slice(0, MOST_FIXES).map((fix) => {
    const { emitter, wifiChannel, scannedWifiChannel, system, workingMarginIfMovedDb } = fix;
    const source = sources.get(emitter);
    return [
      wifiChannel === scannedWifiChannel
        ? `${wifiChannel} as now`
        : `${wifiChannel} from ${scannedWifiChannel}`,
      source === undefined ? "" : `${fixed(source.levelDbm, 0)} dBm`,
      source === undefined || source.levelPlace === "" ? "not said" : printable(source.levelPlace, 14),
      system === null ? "" : `${printable(system, 10)} ${dB(workingMarginIfMovedDb)}`,
      source === undefined ? printable(emitter, 32) : radioWords(source),
    ];
  });
  const lines = tableLines(
    [
      { head: "Wi-Fi ch", align: "left" },
      { head: "loudest", align: "right" },
      { head: "at", align: "left" },
      { head: "if it moved", align: "right" },
      { head: "radio", align: "left" },
    ],
    rows,
    style.columnCount,
  );
  const hiddenCount = fixes.length - rows.length;
  return hiddenCount > 0 ? [...lines, `(and ${hiddenCount} more: --json has them all)`] : lines;
}

/** Its address first: that is what the staff finds it by. */
function radioWords(source: SurveyEmitter): string {
  const name = source.names.length === 0 ? "hidden" : sourceName(source);
  return source.bssids.length === 0 ? name : `${source.bssids[0]} ${name}`;
}
