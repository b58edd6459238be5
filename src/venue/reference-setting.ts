import type { Emitter, SweepLevels } from "../band/index.js";
import { ArgumentError } from "../issues/index.js";
import type { LongWork } from "../issues/index.js";
import { floorLossDb, referenceFadeLaw, referencePathModel } from "../propagation/index.js";
import type { FadeLaw, PathModel } from "../propagation/index.js";
import { reliabilityForAll } from "../quality/index.js";
import type { RadioProfile } from "../radio/index.js";
import type { OverlapCache } from "../scorer/index.js";
import { OPEN_SITE } from "./link-site.js";
import type { LinkSite } from "./link-site.js";

/** What a channel is planned with. */
export interface PlanChannelOptions extends LongWork {
  readonly emitters: readonly Emitter[];
  /** Power sweeps, summed for the profile's channels; none unless given. */
  readonly sweeps?: readonly SweepLevels[];
  readonly profile: RadioProfile;
  /** The reference receiver, m; 20 unless given. */
  readonly distanceM?: number;
  /** Rows of the link table, m. */
  readonly distancesM?: readonly number[];
  readonly pathModel?: PathModel;
  /** Antennas, heights, walls and floors; level, all round and open unless given. */
  readonly site?: LinkSite;
  readonly fadeLaw?: FadeLaw;
  /** Share of receiver positions to hold, 0..1; 0.99 unless given. */
  readonly reliability?: number;
  /** Receivers of the job, whole; not stated unless given. */
  readonly receiverCount?: number;
  /** Chance that all receivers hold, 0..1 exclusive, instead of `reliability`, which it sets; needs `receiverCount`. */
  readonly allHoldProbability?: number;
  /** Share of time that may be worse, 0..1; 0.01 unless given. */
  readonly busyShareRatio?: number;
  /** Length of one Wi-Fi burst, ms; 2 unless given. */
  readonly burstMs?: number;
  /** Length of the event whose look is told; 90 unless given. */
  readonly eventMinutes?: number;
  /** The channel whose link is worked out; the recommended one, or the hop set, unless given. */
  readonly linkChannel?: number;
  /** Edges that the radio must stay within, MHz. */
  readonly bandMhz?: readonly [lowMhz: number, highMhz: number];
  /** Overlaps to reuse between calls for one profile. */
  readonly overlapCache?: OverlapCache;
}

/** The setting of a plan, every default filled in. */
export type ReferenceSetting = Required<
  Omit<
    PlanChannelOptions,
    | "emitters"
    | "sweeps"
    | "bandMhz"
    | "overlapCache"
    | "linkChannel"
    | keyof LongWork
    | "receiverCount"
    | "allHoldProbability"
  >
> & {
  /** Null: not stated. */
  readonly receiverCount: number | null;
  /** Was `reliability` set so that all receivers hold with a stated chance? */
  readonly setForAll: boolean;
};

/** Default distances of a link table, m. */
export const DEFAULT_DISTANCES_M: readonly number[] = [5, 10, 15, 20, 30, 40, 60];

/**
 * @returns the options with every default filled in
 * @throws {ArgumentError} when a chance for all stands without the number of receivers, or beside a reliability
 * @see {@link planChannel}
 */
export function referenceSetting(options: PlanChannelOptions): ReferenceSetting {
  return {
    profile: options.profile,
    distanceM: options.distanceM ?? 20,
    distancesM: options.distancesM ?? DEFAULT_DISTANCES_M,
    pathModel: withFloors(options.pathModel ?? referencePathModel, options.site),
    site: options.site ?? OPEN_SITE,
    fadeLaw: options.fadeLaw ?? referenceFadeLaw,
    ...reliabilityOf(options),
    busyShareRatio: options.busyShareRatio ?? 0.01,
    burstMs: options.burstMs ?? 2,
    eventMinutes: options.eventMinutes ?? 90,
  };
}

function reliabilityOf({
  reliability,
  receiverCount,
  allHoldProbability,
}: PlanChannelOptions): Pick<ReferenceSetting, "reliability" | "receiverCount" | "setForAll"> {
  if (allHoldProbability === undefined)
    return { reliability: reliability ?? 0.99, receiverCount: receiverCount ?? null, setForAll: false };
  if (receiverCount === undefined)
    throw new ArgumentError("receiverCount", "a number of receivers beside allHoldProbability", undefined);
  if (reliability !== undefined)
    throw new ArgumentError("reliability", "none beside allHoldProbability, which sets it", reliability);
  return {
    reliability: reliabilityForAll({ receiverCount, allHoldProbability }),
    receiverCount,
    setForAll: true,
  };
}

/** P.1238 holds the loss of floors itself. */
function withFloors(model: PathModel, site: LinkSite | undefined): PathModel {
  if (model.kind !== "indoor" || !site?.floors) return model;
  const { building, floorCount } = site.floors;
  return { ...model, floorLossDb: (model.floorLossDb ?? 0) + floorLossDb(building, floorCount) };
}
