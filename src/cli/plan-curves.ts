import type { SystemCurve, VenueLinkReport } from "../report/index.js";
import { marginByDistance } from "../venue/index.js";
import type { SystemLinks, VenueSite } from "../venue/index.js";

const FIRST_M = 1;
/** A curve goes no further than the models do. */
const LAST_M = 100;
const POINT_COUNT = 61;

/** Working margin by distance of every system with a signal, as at its weakest receiver. */
export function planCurves(
  systems: VenueLinkReport["systems"],
  siteOf: (system: string) => VenueSite,
): SystemCurve[] {
  return systems.flatMap((links) => systemCurve(links, siteOf(links.system.name)) ?? []);
}

function systemCurve({ system, receivers }: SystemLinks, site: VenueSite): SystemCurve | null {
  const heard = receivers.filter(({ judged }) => Number.isFinite(judged.budget.workingMarginDb));
  const [weakest] = heard;
  if (weakest === undefined) return null;
  const { workingMarginDbAt, reach } = marginByDistance(site, weakest.receiver, weakest.judged);
  const points = Array.from({ length: POINT_COUNT }, (_, index) => {
    const distanceM = FIRST_M * (LAST_M / FIRST_M) ** (index / (POINT_COUNT - 1));
    return { distanceM, workingMarginDb: workingMarginDbAt(distanceM) };
  });
  return {
    system: system.name,
    room: weakest.receiver.room,
    receiver: weakest.receiver.name,
    points,
    reachM: reach.reachM,
    reachReason: reach.reason,
    receivers: heard.map(({ receiver, judged: { link, budget } }) => ({
      receiver: receiver.name,
      distanceM: link.distanceM,
      workingMarginDb: budget.workingMarginDb,
    })),
  };
}
