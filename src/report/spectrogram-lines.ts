import { printable } from "../issues/index.js";
import { axisLabel, axisLines } from "./busy-axis.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import type { Spectrogram, SpectrogramRow } from "./spectrogram.js";
import { clipped } from "./text-layout.js";

/** From the darkest: over the level that spoils the receiver, then down by so many dB each. */
const SHADES = ["█", "▓", "▒", "░"];
const STEP_DB = 10;
const UNREAD = "·";

/**
 * Power sweeps as pictures in shades of grey, one after the other: time downwards, frequency across.
 * @param spoiltDbm the darkest shade is above this level, rounded to a whole dB
 */
export function spectrogramLines(
  pictures: readonly Spectrogram[],
  spoiltDbm: number,
  style: TextStyle,
): string[] {
  if (pictures.length === 0) return [];
  const drawn = pictures.filter(({ relative }) => !relative);
  const untold = pictures.filter(({ relative }) => relative);
  return [
    ...(drawn.length === 0 ? [] : legendLines(spoiltDbm)),
    ...drawn.flatMap((picture) => pictureLines(picture, spoiltDbm, style)),
    ...untold.map((picture) =>
      clipped(`${headOf(picture)}: relative levels, not dBm: not drawn`, style.columnCount),
    ),
  ];
}

function legendLines(spoiltDbm: number): string[] {
  const shades = SHADES.map((shade, index) => {
    const level = `${shade} over ${fixed(Math.round(spoiltDbm) - index * STEP_DB, 0)}`;
    return index === 0 ? `${level} dBm (spoils the receiver)` : level;
  });
  return [
    `${shades.join(", ")},`,
    `blank less, ${UNREAD} not swept; the highest in one MHz of any pass in its row; UTC`,
  ];
}

function pictureLines(picture: Spectrogram, spoiltDbm: number, style: TextStyle): string[] {
  const days = picture.rows.map(dayOf);
  const isOfOneDay = new Set(days.filter((day) => day !== "")).size <= 1;
  const rows = picture.rows.map((row, index) => {
    const cells = row.maxDbm.map((levelDbm) => shadeOf(levelDbm, spoiltDbm)).join("");
    const day = isOfOneDay || days[index] === days[index - 1] ? "" : ` ${days[index]}`;
    return `${style.pen.faint(axisLabel(clockOf(row)))}${cells}${day}`.trimEnd();
  });
  const day = isOfOneDay ? days.find((word) => word !== "") : undefined;
  const head = `${headOf(picture)}${day === undefined ? "" : `, ${day}`}`;
  const columnCount = picture.rows[0]?.maxDbm.length ?? 0;
  return [clipped(head, style.columnCount), ...rows, ...axisLines(picture.startMhz, columnCount, style)];
}

function headOf({ place, crowd, passCount }: Spectrogram): string {
  const where = place === "" ? "place not named" : printable(place, 36);
  return `${where}, ${crowd ?? "crowd not said"}: ${passCount} ${passCount === 1 ? "pass" : "passes"}`;
}

function shadeOf(levelDbm: number | null, spoiltDbm: number): string {
  if (levelDbm === null) return UNREAD;
  const index = SHADES.findIndex((_, step) => levelDbm > Math.round(spoiltDbm) - step * STEP_DB);
  return index < 0 ? " " : SHADES[index]!;
}

function clockOf({ startMs }: SpectrogramRow): string {
  return startMs === null ? "no time" : new Date(startMs).toISOString().slice(11, 19);
}

function dayOf({ startMs }: SpectrogramRow): string {
  return startMs === null ? "" : new Date(startMs).toISOString().slice(0, 10);
}
