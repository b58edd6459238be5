import type { TextStyle } from "./pen.js";
import type { PlanReport } from "./plan-report.js";
import { roomLines, roomTitle } from "./room-lines.js";
import { roomsGlance } from "./rooms-glance.js";
import { bullets, opening, pageText, section } from "./section.js";
import { venueCautions } from "./venue-cautions.js";

/** A file of the plan's folder. */
export interface PlanFile {
  readonly name: string;
  readonly words: string;
}

/** `plan` for a terminal: the answer, room by room, then what was written and for whom. */
export function planText(
  { rooms }: PlanReport,
  written: readonly { readonly folder: string; readonly files: readonly PlanFile[] }[],
  style: TextStyle,
): string {
  return pageText([
    opening(roomsGlance(rooms), style),
    ...rooms.rooms.map((room) => section(roomTitle(room), style, opening(roomLines(room, rooms), style))),
    ...written.map(({ folder, files }) => section(`Written to ${folder}`, style, fileLines(files))),
    section("Cautions", style, bullets(venueCautions(rooms.venue), style)),
  ]);
}

function fileLines(files: readonly PlanFile[]): string[] {
  const width = Math.max(...files.map(({ name }) => name.length));
  return files.map(({ name, words }) => `${name.padEnd(width)}  ${words}`);
}
