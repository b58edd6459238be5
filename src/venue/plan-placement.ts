import { verdictOf } from "../propagation/index.js";
import type { Antenna } from "../propagation/index.js";
import { SLACK } from "../units/index.js";
import { placeTransmitters } from "./place-transmitters.js";
import type { PlacedPair, Placement, PlaceTransmittersOptions, RankedPlace } from "./place-transmitters.js";
import { placementSetting } from "./placement-setting.js";
import type { PlacementSetting } from "./placement-setting.js";
import type { TransmitterPlace, VenueSystem } from "./venue-system.js";
import type { VenueSite } from "./venue-site.js";

/** As for `placeTransmitters`, among candidates, a grid or both. */
export interface PlanPlacementOptions extends Omit<
  PlaceTransmittersOptions,
  "places" | "apartM" | "setting"
> {
  /** Among which places; `both` unless given. */
  readonly among?: "candidates" | "grid" | "both" | undefined;
}

/** A place of a plan, and who named it. */
export interface PlannedPlace extends RankedPlace {
  /** `planned`: the transmitter of the venue file. */
  readonly from: "planned" | "candidate" | "grid";
}

/** Where a system's transmitter should stand. */
export interface PlacementPlan {
  readonly system: VenueSystem;
  /** The channel that it holds for; null for a hopping radio. */
  readonly channel: number | null;
  readonly frequencyMhz: number;
  readonly setting: PlacementSetting;
  /** Best first, the transmitter of the venue file always among them; what each gives up is beside the first. */
  readonly places: readonly PlannedPlace[];
  /**
   * The first; but the planned transmitter, else a candidate, that keeps the antenna practice and is ample or gives
   * up less than 1 dB; null where there is no place.
   */
  readonly choice: PlannedPlace | null;
  /** Points of the grid, looked at and left out by the keep-outs; null where no grid was asked for. */
  readonly grid: Pick<Placement, "triedCount" | "keptOutCount"> | null;
  /** Of the grid's transmitter. */
  readonly gridAntenna: Antenna | null;
  /** Where no single place serves every receiver; null where one does, or no pair is better. */
  readonly pair: PlacedPair | null;
}

/** A new place must gain at least so much to be worth the move, dB (assumed; what a survey can tell). */
const WORTH_DB = 1;

/**
 * A system's transmitter as planned beside its candidates and the best points of a grid, all on one channel and
 * with the same interference. Candidates and the planned transmitter are all told, of the grid the best three.
 * @throws {ArgumentError} as `placeTransmitters`
 * @throws the signal's reason when it is aborted
 * @see {@link venueSite}
 */
export function planPlacement(
  site: VenueSite,
  system: VenueSystem,
  options: PlanPlacementOptions,
): PlacementPlan {
  const { among = "both", antenna = system.transmitter?.antenna ?? { kind: "dipole" } } = options;
  const setting = placementSetting(site, system, options);
  const common = { ...options, antenna, setting };
  const candidates = among === "grid" ? [] : system.candidates;
  const named = placesNamed(system.transmitter, candidates);
  const choices = [
    ...(named.length === 0
      ? []
      : [placeTransmitters(site, system, { ...common, places: named, topCount: named.length })]),
    ...(among === "candidates" ? [] : [placeTransmitters(site, system, { ...common, places: [] })]),
  ];
  const grid = among === "candidates" ? null : choices[choices.length - 1]!;
  const { transmitter } = system;
  const places = withLosses(
    choices.flatMap((one) =>
      one.ranked.map((ranked): PlannedPlace => {
        const from = one === grid ? "grid" : ranked.place === transmitter ? "planned" : "candidate";
        return { ...ranked, from };
      }),
    ),
  );
  const { channel, frequencyMhz } = setting;
  return {
    system,
    channel,
    frequencyMhz,
    setting,
    places,
    choice: choiceOf(places),
    grid,
    gridAntenna: antenna,
    pair: pairOf(places, choices),
  };
}

function placesNamed(
  transmitter: TransmitterPlace | null,
  candidates: readonly TransmitterPlace[],
): TransmitterPlace[] {
  return transmitter === null ? [...candidates] : [transmitter, ...candidates];
}

/** Best first; of equal ones those that somebody named. */
function withLosses(places: readonly PlannedPlace[]): PlannedPlace[] {
  const order = [...places].sort((a, b) =>
    a.leastMarginDb === b.leastMarginDb ? 0 : b.leastMarginDb - a.leastMarginDb,
  );
  const bestDb = order[0]?.leastMarginDb ?? -Infinity;
  return order.map((one) => {
    const givesUpDb = bestDb - one.leastMarginDb;
    return { ...one, givesUpDb: Number.isFinite(givesUpDb) ? givesUpDb : null };
  });
}

/** What is planned stays, and what somebody named is taken, where it breaks nothing and a better place gains little. */
function choiceOf(places: readonly PlannedPlace[]): PlannedPlace | null {
  const good = places.filter(
    ({ breaks, leastMarginDb, givesUpDb }) =>
      breaks.length === 0 &&
      (verdictOf(leastMarginDb) === "ample" || (givesUpDb !== null && givesUpDb < WORTH_DB)),
  );
  const first = (from: PlannedPlace["from"]): PlannedPlace | undefined =>
    good.find((one) => one.from === from);
  return first("planned") ?? first("candidate") ?? places[0] ?? null;
}

function pairOf(places: readonly PlannedPlace[], choices: readonly Placement[]): PlacedPair | null {
  const aloneDb = places[0]?.leastMarginDb ?? -Infinity;
  if (aloneDb >= -SLACK) return null;
  return choices.reduce<PlacedPair | null>((best, { pair }) => {
    const leastDb = best?.leastMarginDb ?? aloneDb + SLACK;
    return pair !== null && pair.leastMarginDb > leastDb ? pair : best;
  }, null);
}
