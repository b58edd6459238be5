import { barMark } from "./bar-mark.js";
import type { BandProfile } from "../scorer/index.js";
import type { ChannelPlan } from "../venue/index.js";
import type { TextStyle } from "./pen.js";
import { fixed } from "./number-format.js";

const LABEL = 6;
const DB_PER_ROW = 5;
const MOST_ROWS = 12;

/**
 * The band as flat stepped bars of what reaches our receiver, dB above its noise, our channels beneath. A
 * dotted line marks the level above which the wanted signal at the reference distance is spoilt.
 * @param profile one step a column
 */
export function bandPicture(profile: BandProfile, plan: ChannelPlan, style: TextStyle): string[] {
  const ceilingDb = ceilingAboveNoiseDb(plan);
  const highestDb = Math.max(ceilingDb ?? 0, ...profile.aboveNoiseDb);
  const dbPerRow = Math.max(DB_PER_ROW, Math.ceil(highestDb / MOST_ROWS / 5) * 5);
  const rowCount = Math.max(2, Math.floor(highestDb / dbPerRow) + 1);
  const rows = Array.from({ length: rowCount }, (_, index) => rowCount - 1 - index);
  const limitRow = ceilingDb === null ? -1 : Math.floor(ceilingDb / dbPerRow);
  const drawn = rows.map((row) => {
    const label = row % 2 === 0 ? fixed(row * dbPerRow, 0).padStart(LABEL - 2) : " ".repeat(LABEL - 2);
    const cells = profile.aboveNoiseDb.map((levelDb) => cell(levelDb, row, dbPerRow, row === limitRow));
    return `${style.pen.faint(`${label} │`)}${cells.join("")}`.trimEnd();
  });
  return [
    ...drawn,
    style.pen.faint(`${" ".repeat(LABEL - 1)}└${"─".repeat(profile.aboveNoiseDb.length)}`),
    style.pen.faint(scaleLine(profile)),
    ...channelLines(profile, plan, style),
  ];
}

/** Wanted − required C/I at the reference distance, above the noise; null where the radio hops or has no channel. */
function ceilingAboveNoiseDb({ ranking, link, setting }: ChannelPlan): number | null {
  const score = ranking.find(({ channel }) => channel === link.channel);
  if (score === undefined) return null;
  return score.wantedDbm - setting.profile.requiredCiDb.value - score.distribution.restDbm;
}

function cell(levelDb: number, row: number, dbPerRow: number, limit: boolean): string {
  const mark = barMark((levelDb - row * dbPerRow) / dbPerRow);
  return mark === " " && limit ? "·" : mark;
}

function scaleLine({ startMhz, stepMhz, aboveNoiseDb }: BandProfile): string {
  const line = Array.from({ length: LABEL + aboveNoiseDb.length + 8 }, () => " ");
  const endMhz = startMhz + stepMhz * aboveNoiseDb.length;
  for (let mhz = Math.ceil(startMhz / 20) * 20; mhz <= endMhz; mhz += 20)
    write(line, LABEL + Math.floor((mhz - startMhz) / stepMhz), String(mhz));
  return `${line.join("").trimEnd()} MHz`;
}

function channelLines(profile: BandProfile, plan: ChannelPlan, style: TextStyle): string[] {
  const { startMhz, stepMhz, aboveNoiseDb } = profile;
  const column = (centreMhz: number): number => LABEL + Math.floor((centreMhz - startMhz) / stepMhz);
  const blank = (): string[] => Array.from({ length: LABEL + aboveNoiseDb.length + 4 }, () => " ");
  const rising = [...plan.ranking].sort((a, b) => a.centreMhz - b.centreMhz);
  if (plan.hopSet !== null) {
    const marks = blank();
    const kept = new Set(plan.hopSet.channels);
    for (const { channel, centreMhz } of rising)
      write(marks, column(centreMhz), kept.has(channel) ? "#" : ".");
    return [`${marks.join("").trimEnd()}`, `${" ".repeat(LABEL)}# in the hop set, . kept out`];
  }
  const numbers = blank();
  write(numbers, 0, "radio");
  for (const { channel, centreMhz } of rising) write(numbers, column(centreMhz), String(channel));
  for (const [choice, open, close] of choicesOf(plan)) {
    const score = rising.find(({ channel }) => channel === choice.channel);
    if (score !== undefined) write(numbers, column(score.centreMhz) - 1, `${open}${score.channel}${close}`);
  }
  return [style.pen.strong(numbers.join("").trimEnd()), "ch     [ ] use, ( ) fallback"];
}

/** How the chosen channels are marked, the recommended last so that nothing hides it. */
const choicesOf = ({
  backup,
  recommended,
}: ChannelPlan): (readonly [ChannelPlan["backup"], string, string])[] => [
  [backup, "(", ")"],
  [recommended, "[", "]"],
];

function write(line: string[], at: number, text: string): void {
  for (const [index, character] of [...text].entries())
    if (at + index < line.length) line[at + index] = character;
}
