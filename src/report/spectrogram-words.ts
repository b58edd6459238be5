import { printable } from "../issues/index.js";
import type { Spectrogram, SpectrogramRow } from "./spectrogram.js";

/** Where and with how many people a sweep was made, its passes, and its day where there is one. */
export function spectrogramHead(picture: Spectrogram): string {
  const { place, crowd, passCount } = picture;
  const where = place === "" ? "place not named" : printable(place, 36);
  const head = `${where}, ${crowd ?? "crowd not said"}: ${passCount} ${passCount === 1 ? "pass" : "passes"}`;
  const day = isOfOneDay(picture) ? daysOf(picture).find((word) => word !== "") : undefined;
  return day === undefined ? head : `${head}, ${day}`;
}

/** For each row the day that begins with it, where the sweep has several; else empty. */
export function newDays(picture: Spectrogram): string[] {
  if (isOfOneDay(picture)) return picture.rows.map(() => "");
  const days = daysOf(picture);
  return days.map((day, index) => (day === days[index - 1] ? "" : day));
}

/** `19:42:10`, UTC. */
export function rowClock({ startMs }: SpectrogramRow): string {
  return startMs === null ? "no time" : new Date(startMs).toISOString().slice(11, 19);
}

function isOfOneDay(picture: Spectrogram): boolean {
  return new Set(daysOf(picture).filter((day) => day !== "")).size <= 1;
}

function daysOf({ rows }: Spectrogram): string[] {
  return rows.map(({ startMs }) => (startMs === null ? "" : new Date(startMs).toISOString().slice(0, 10)));
}
