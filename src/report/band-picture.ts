import { bandModel } from "./band-model.js";
import type { BandModel } from "./band-model.js";
import { barMark } from "./bar-mark.js";
import type { BandProfile } from "../scorer/index.js";
import type { ChannelPlan } from "../venue/index.js";
import { frequencyTicksMhz } from "./frequency-ticks.js";
import type { TextStyle } from "./pen.js";
import { fixed } from "./number-format.js";

const LABEL = 6;

/**
 * The band as flat stepped bars of what reaches our receiver, dB above its noise, our channels beneath. A
 * dotted line marks the level above which the wanted signal at the reference distance is spoilt.
 * @param profile one step a column
 */
export function bandPicture(profile: BandProfile, plan: ChannelPlan, style: TextStyle): string[] {
  const model = bandModel(profile, plan);
  const { topDb, rowDb, spoiltAboveNoiseDb } = model;
  const rowCount = Math.round(topDb / rowDb);
  const rows = Array.from({ length: rowCount }, (_, index) => rowCount - 1 - index);
  const limitRow = spoiltAboveNoiseDb === null ? -1 : Math.floor(spoiltAboveNoiseDb / rowDb);
  const drawn = rows.map((row) => {
    const label = row % 2 === 0 ? fixed(row * rowDb, 0).padStart(LABEL - 2) : " ".repeat(LABEL - 2);
    const cells = profile.aboveNoiseDb.map((levelDb) => cell(levelDb, row, rowDb, row === limitRow));
    return `${style.pen.faint(`${label} │`)}${cells.join("")}`.trimEnd();
  });
  return [
    ...drawn,
    style.pen.faint(`${" ".repeat(LABEL - 1)}└${"─".repeat(profile.aboveNoiseDb.length)}`),
    style.pen.faint(scaleLine(profile)),
    ...channelLines(model, style),
  ];
}

function cell(levelDb: number, row: number, rowDb: number, limit: boolean): string {
  const mark = barMark((levelDb - row * rowDb) / rowDb);
  return mark === " " && limit ? "·" : mark;
}

function scaleLine({ startMhz, stepMhz, aboveNoiseDb }: BandProfile): string {
  const line = Array.from({ length: LABEL + aboveNoiseDb.length + 8 }, () => " ");
  const endMhz = startMhz + stepMhz * aboveNoiseDb.length;
  for (const mhz of frequencyTicksMhz(startMhz, endMhz))
    write(line, LABEL + Math.floor((mhz - startMhz) / stepMhz), String(mhz));
  return `${line.join("").trimEnd()} MHz`;
}

function channelLines({ profile, channels, isHopping }: BandModel, style: TextStyle): string[] {
  const { startMhz, stepMhz, aboveNoiseDb } = profile;
  const column = (centreMhz: number): number => LABEL + Math.floor((centreMhz - startMhz) / stepMhz);
  const blank = (): string[] => Array.from({ length: LABEL + aboveNoiseDb.length + 4 }, () => " ");
  if (isHopping) {
    const marks = blank();
    for (const { centreMhz, use } of channels) write(marks, column(centreMhz), use === "hop" ? "#" : ".");
    return [`${marks.join("").trimEnd()}`, `${" ".repeat(LABEL)}# in the hop set, . kept out`];
  }
  const numbers = blank();
  write(numbers, 0, "radio");
  for (const { channel, centreMhz } of channels) write(numbers, column(centreMhz), String(channel));
  // The one to use last, so that nothing hides it.
  for (const [choice, open, close] of [["fallback", "(", ")"] as const, ["use", "[", "]"] as const])
    for (const { channel, centreMhz, use } of channels)
      if (use === choice) write(numbers, column(centreMhz) - 1, `${open}${channel}${close}`);
  return [style.pen.strong(numbers.join("").trimEnd()), "ch     [ ] use, ( ) fallback"];
}

function write(line: string[], at: number, text: string): void {
  for (const [index, character] of [...text].entries())
    if (at + index < line.length) line[at + index] = character;
}
