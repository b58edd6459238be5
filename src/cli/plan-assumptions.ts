import type { PlanAssumption } from "../commissioning/index.js";
import type { RoomsReport } from "../report/index.js";

/**
 * Every figure that a plan rests on without having measured it, so that a later check compares like with like: terms
 * of the plan, what the crowd brings, each system's radio.
 */
export function planAssumptions({
  venue,
  crowd,
  terms,
  words,
  handsetChannels,
}: PlannedWith): PlanAssumption[] {
  const { reliability, busyShareRatio, burstMs } = terms;
  return [
    ...named("plan", {
      crowd,
      reliability,
      busyShareRatio,
      burstMs,
      eventMinutes: venue.eventMinutes,
      region: venue.region,
      building: venue.building,
      pathModel: words.path,
      fadeLaw: words.fade,
      handsetChannels: handsetChannels.join(" "),
    }),
    ...named("crowd", { ...venue.crowd }),
    ...venue.systems.flatMap(({ name, profile }) =>
      named(`system ${name}`, {
        profile: profile.name,
        generic: profile.generic,
        txPowerDbm: profile.txPowerDbm.value,
        txGainDbi: profile.txGainDbi.value,
        rxGainDbi: profile.rxGainDbi.value,
        enclosureLossDb: profile.enclosureLossDb.value,
        sensitivityDbm: profile.sensitivityDbm.value,
        requiredCiDb: profile.requiredCiDb.value,
        noiseFigureDb: profile.noiseFigureDb.value,
      }),
    ),
  ];
}

type PlannedWith = Pick<RoomsReport, "venue" | "crowd" | "words" | "handsetChannels"> & {
  readonly terms: Pick<RoomsReport["terms"], "reliability" | "busyShareRatio" | "burstMs">;
};

function named(of: string, figures: Readonly<Record<string, PlanAssumption["value"]>>): PlanAssumption[] {
  return Object.entries(figures).map(([key, value]) => ({ name: `${of}: ${key}`, value }));
}
