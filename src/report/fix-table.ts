import { printable } from "../issues/index.js";
import type { SurveyEmitter } from "../scan/index.js";
import type { WifiFix } from "../venue/index.js";
import { sourceName } from "./channel-tables.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { tableLines } from "./text-layout.js";

/** Sources of a survey by id. */
export type Sources = ReadonlyMap<string, SurveyEmitter>;

type Fix = Pick<WifiFix, "emitter" | "wifiChannel" | "scannedWifiChannel">;

/** Rows of radios that text shows; JSON has them all. */
const MOST_FIXES = 12;

/**
 * The radios to fix, where each stands and, where told, what it costs if it moves; nothing where there is none.
 * @param ifMoved the words of that column; null: no such column
 * @param placeColumnCount columns for the name of the place
 */
export function fixTable<One extends Fix>(
  fixes: readonly One[],
  sources: Sources,
  style: TextStyle,
  ifMoved: ((fix: One) => string) | null,
  placeColumnCount: number,
): string[] {
  if (fixes.length === 0) return [];
  const rows = fixes.slice(0, MOST_FIXES).map((fix) => {
    const { emitter, wifiChannel, scannedWifiChannel } = fix;
    const source = sources.get(emitter);
    return [
      wifiChannel === scannedWifiChannel
        ? `${wifiChannel} as now`
        : `${wifiChannel} from ${scannedWifiChannel}`,
      source === undefined ? "" : `${fixed(source.levelDbm, 0)} dBm`,
      source === undefined || source.levelPlace === ""
        ? "not said"
        : printable(source.levelPlace, placeColumnCount),
      ...(ifMoved === null ? [] : [ifMoved(fix)]),
      source === undefined ? printable(emitter, 32) : radioWords(source),
    ];
  });
  const lines = tableLines(
    [
      { head: "Wi-Fi ch", align: "left" },
      { head: "loudest", align: "right" },
      { head: "at", align: "left" },
      ...(ifMoved === null ? [] : [{ head: "if it moved", align: "right" } as const]),
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
