import type { ChannelPlan } from "../venue/index.js";
import { frameLines } from "./frame-lines.js";
import { chancePercent, exactPercent, framesAMinute, lastingTime, lossPercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets } from "./section.js";
import { tableLines } from "./text-layout.js";

type Looks = NonNullable<ChannelPlan["looks"]>;
type Look = Pick<Looks["typical"], "lossRatio" | "holds" | "holdOnceAnEventS">;

/** What the audience sees: frames lost, the chances of a hold, and both in plain sentences. */
export function lookLines(plan: ChannelPlan, style: TextStyle): string[] {
  const { looks, setting } = plan;
  if (looks === null) return frameLines(plan, style);
  const edge = `edge of ${exactPercent(setting.reliability)}`;
  return [
    ...frameLines(plan, style),
    ...holdTable(looks, edge, style),
    ...bullets([expectation(plan, looks, edge), STILL_LOOK, burstWords(plan, looks)], style),
  ];
}

const STILL_LOOK = "A hold shows only while the look is changing; in a still look nobody sees it.";

/** The chance of a hold in the event; nothing where no frame is lost. */
function holdTable(looks: Looks, edge: string, style: TextStyle): string[] {
  const rows = [["typical", looks.typical] as const, [edge, looks.edge] as const].flatMap(
    ([position, look]) => {
      const own = holdCells(look);
      const inBursts = look.inBursts === null ? own : holdCells(look.inBursts);
      const differ = inBursts.some((cell, index) => cell !== own[index]);
      return [[position, ...own], ...(differ ? [[`${position}, in bursts`, ...inBursts]] : [])];
    },
  );
  if (looks.typical.lossRatio <= 0 && looks.edge.lossRatio <= 0 && rows.length === 2) return [];
  const heads = ["chance of a hold of", ...looks.typical.holds.map(({ holdS }) => `${holdS} s or more`)];
  return tableLines(
    [...heads, "longest"].map((head, index) => ({ head, align: index === 0 ? "left" : "right" })),
    rows,
    style.columnCount,
  );
}

function holdCells({ lossRatio, holds, holdOnceAnEventS }: Look): string[] {
  const chances = holds.map(({ probability }) => {
    if (lossRatio <= 0) return "0 %";
    return lossRatio >= 1 && probability >= 1 ? "100 %" : chancePercent(probability);
  });
  return [...chances, holdOnceAnEventS <= 0 ? "none" : lastingTime(holdOnceAnEventS)];
}

/** What to expect in the event, as a lighting person would say it. */
function expectation({ setting }: ChannelPlan, { typical, edge }: Looks, edgeWords: string): string {
  const opening = `In a ${setting.eventMinutes}-minute event expect`;
  const allPerMinute = setting.profile.frameRateHz.value * 60;
  const [here, there] = [seenWords(typical, allPerMinute), seenWords(edge, allPerMinute)];
  if (here === there)
    return `${opening} ${here}, at the typical position and at the ${edgeWords} of positions.`;
  return `${opening}, at the typical position, ${here}; at the ${edgeWords} of positions, ${there}.`;
}

function seenWords(look: Looks["typical"], allPerMinute: number): string {
  const { lossRatio, lostPerMinute, holdOnceAnEventS, eventMinutes } = look;
  if (lossRatio <= 0) return "no frame lost and no hold";
  if (lossRatio >= 1) return "every frame lost: fixtures hold their last look throughout";
  if (holdOnceAnEventS <= 0) return "hardly ever a frame lost and no hold";
  const inAllCount = Math.round(lostPerMinute * eventMinutes);
  const inAll = `${inAllCount} ${inAllCount === 1 ? "frame" : "frames"} in all`;
  const often = lostPerMinute >= 1 ? framesAMinute(lostPerMinute) : inAll;
  const lost = lostPerMinute >= allPerMinute - 0.5 ? "nearly every frame" : often;
  return `${lost} lost and a longest hold of ${lastingTime(holdOnceAnEventS)}, ${gradeWords(holdOnceAnEventS)}`;
}

/** How a hold strikes an audience (common practice, no source). */
function gradeWords(holdS: number): string {
  if (holdS < 0.1) return "too short to be seen";
  if (holdS < 0.5) return "hardly seen";
  return holdS < 2 ? "a stutter in a fade or chase" : "taken for a fault";
}

/** Independence is the model's limit; the burst-aware figure stands beside it. */
function burstWords({ setting }: ChannelPlan, { typical, edge }: Looks): string {
  const limit = "Frames are taken as lost independently of each other, the model's limit";
  const slow = "Slow changes, as people walking into the path or a crowd arriving, are in neither.";
  const reason = typical.inBurstsReason ?? edge.inBurstsReason;
  if (typical.inBursts === null && edge.inBursts === null) return `${limit}; in bursts: not told, ${reason}.`;
  const model = `in bursts (of ${setting.burstMs} ms on average, a two-state channel)`;
  const [here, there] = [burstHold(typical), burstHold(edge)];
  const holds = here === there ? here : `${here}, at the edge ${there}`;
  const lossDiffers = /of frames lost/.test(holds);
  const together = lossDiffers ? " What harms only together counts as bursts there, too." : "";
  return `${limit}; ${model}: ${holds}.${together} ${slow}`;
}

function burstHold({ inBursts, inBurstsReason, lossRatio }: Looks["typical"]): string {
  if (inBursts === null) return `not told (${inBurstsReason})`;
  const hold =
    inBursts.holdOnceAnEventS <= 0
      ? "no hold"
      : `a longest hold of ${lastingTime(inBursts.holdOnceAnEventS)}`;
  const lost = lossPercent(inBursts.lossRatio);
  return lost === lossPercent(lossRatio) ? hold : `${lost} of frames lost and ${hold}`;
}
