import type { Survey } from "../scan/index.js";
import type { ChannelPlan } from "../venue/index.js";
import { exactPercent } from "./number-format.js";
import { columnsOf } from "./text-layout.js";

/** In what crowd the scans were made. */
export function whenWords({ fullestCrowd }: Survey): string {
  return fullestCrowd === "full" ? "full house" : "as scanned";
}

/** Columns that a line of the opening block leaves for its words. */
const ROOM = 70;

/** What is told of: frames and looks of one receiver, and what they were worked out with. */
export interface AudiencePlan extends Pick<ChannelPlan, "frames" | "looks"> {
  readonly setting: Pick<ChannelPlan["setting"], "profile" | "reliability" | "eventMinutes">;
}

/**
 * What the audience would see, in one line of the opening block: frames lost and the longest hold expected.
 * @param when `full house`, `as scanned`, or against what else
 */
export function audienceWords({ frames, looks, setting }: AudiencePlan, when: string): string {
  if (frames === null || looks === null) return "nothing would work";
  const { typical, edge } = frames;
  const edgeWords = `edge of ${exactPercent(setting.reliability)}`;
  const all = Math.round(setting.profile.frameRateHz.value * 60);
  if (edge.lostPerMinute <= 0)
    return `${when}: no frames lost in ${exactPercent(setting.reliability)} of positions`;
  if (typical.lossRatio >= 1) return `${when}: all frames lost, fixtures hold their last look`;
  const none = typical.lostPerMinute <= 0;
  const hold = `longest hold ${holdWords(longestHoldS(looks), setting.eventMinutes)}`;
  const lost = wholeFrames(typical.lostPerMinute, all);
  if (lost === NEARLY_ALL) return `${when}: ${lost} frames lost; ${hold}`;
  if (edge.lossRatio >= 1) {
    if (none) return `${when}: no frames lost, but frozen at the ${edgeWords}`;
    const often = `${when}: ${lost} of ${all} frames a minute lost`;
    return fitting([`${often}; ${edgeWords}: frozen`, `${often}; edge frozen`]);
  }
  const atEdge = wholeFrames(edge.lostPerMinute, all);
  if (none)
    return fitting([
      `${when}: no frames lost; ${edgeWords}: ${atEdge} a minute; ${hold}`,
      `${when}: no frames lost, edge ${atEdge} a minute; ${hold}`,
    ]);
  return fitting([
    `${when}: ${lost} of ${all} frames a minute lost; ${edgeWords}: ${atEdge}; ${hold}`,
    `${when}: ${lost} of ${all} frames a minute lost, edge ${atEdge}; ${hold}`,
    `${when}: ${lost} frames a minute lost, edge ${atEdge}; ${hold}`,
  ]);
}

/** The first of some wordings that fits in the line, else the last. */
function fitting(ways: readonly string[]): string {
  return ways.find((words) => columnsOf(words) <= ROOM) ?? ways[ways.length - 1]!;
}

/** The longest hold expected in an event, at either position, independent or in bursts, s. */
function longestHoldS({ typical, edge }: NonNullable<ChannelPlan["looks"]>): number {
  const holdsS = [typical, edge].flatMap(({ holdOnceAnEventS, inBursts }) => [
    holdOnceAnEventS,
    inBursts?.holdOnceAnEventS ?? 0,
  ]);
  return Math.max(...holdsS);
}

/** Whole seconds and words, never rounded down. */
function holdWords(holdS: number, eventMinutes: number): string {
  if (holdS <= 0) return "none";
  if (holdS < 1) return "<1 s";
  if (holdS >= eventMinutes * 60) return "all of it";
  return holdS <= 90 ? `${Math.ceil(holdS - 1e-9)} s` : `${Math.ceil(holdS / 60 - 1e-9)} min`;
}

const NEARLY_ALL = "nearly all";

/** Whole frames; neither none nor all of them where that isn't so. */
function wholeFrames(lostPerMinute: number, allPerMinute: number): string {
  if (lostPerMinute < 1) return "under 1";
  return lostPerMinute >= allPerMinute - 0.5 ? NEARLY_ALL : String(Math.round(lostPerMinute));
}
