import { axisLabel, axisLines } from "./busy-axis.js";
import type { TextStyle } from "./pen.js";
import type { Spectrogram } from "./spectrogram.js";
import { shadeIndex, shadeWords } from "./spectrogram-shades.js";
import { newDays, rowClock, spectrogramHead } from "./spectrogram-words.js";
import { clipped } from "./text-layout.js";

/** From the strongest. */
const SHADES = ["█", "▓", "▒", "░"];
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
    ...untold.map((picture) => {
      const head = spectrogramHead({ ...picture, rows: [] });
      return clipped(`${head}: relative levels, not dBm: not drawn`, style.columnCount);
    }),
  ];
}

function legendLines(spoiltDbm: number): string[] {
  const shades = shadeWords(spoiltDbm).map((words, index) => `${SHADES[index]!} ${words}`);
  return [
    `${shades.join(", ")},`,
    `blank less, ${UNREAD} not swept; the highest in one MHz of any pass in its row; UTC`,
  ];
}

function pictureLines(picture: Spectrogram, spoiltDbm: number, style: TextStyle): string[] {
  const days = newDays(picture);
  const rows = picture.rows.map((row, index) => {
    const cells = row.maxDbm.map((levelDbm) => shadeOf(levelDbm, spoiltDbm)).join("");
    const day = days[index] === "" ? "" : ` ${days[index]}`;
    return `${style.pen.faint(axisLabel(rowClock(row)))}${cells}${day}`.trimEnd();
  });
  const columnCount = picture.rows[0]?.maxDbm.length ?? 0;
  const head = clipped(spectrogramHead(picture), style.columnCount);
  return [head, ...rows, ...axisLines(picture.startMhz, columnCount, style)];
}

function shadeOf(levelDbm: number | null, spoiltDbm: number): string {
  if (levelDbm === null) return UNREAD;
  const index = shadeIndex(levelDbm, spoiltDbm);
  return index === null ? " " : SHADES[index]!;
}
