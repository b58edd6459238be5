import type { ChannelPlan, PositionLook } from "../venue/index.js";

/** Frames lost at both positions, each with what it looks like in an event. */
export function framesBlock({ frames, looks }: ChannelPlan): object | null {
  if (frames === null || looks === null) return null;
  return {
    typical: { ...frames.typical, look: lookBlock(looks.typical) },
    edge: { ...frames.edge, look: lookBlock(looks.edge) },
  };
}

function lookBlock({
  eventMinutes,
  holds,
  holdOnceAnEventS,
  inBursts,
  inBurstsReason,
}: PositionLook): object {
  return { eventMinutes, holds, holdOnceAnEventS, inBursts, inBurstsReason };
}

/** The whole job; null with the reason where the number of receivers was not stated. */
export function jobBlock({ job, jobReason }: ChannelPlan): object {
  return { job, jobReason };
}

/** The hop set with the least number of frequencies that must stay in it, and what asks for it. */
export function hopSetBlock({ hopSet, setting }: ChannelPlan): object | null {
  return hopSet === null
    ? null
    : { ...hopSet, leastHopCount: setting.profile.hopping?.leastHopCount ?? null };
}
