import type { Emitter, SweepLevels } from "../band/index.js";
import { referenceFadeLaw, referencePathModel } from "../propagation/index.js";
import type { FadeLaw, PathModel } from "../propagation/index.js";
import type { RadioProfile } from "../radio/index.js";

export interface PlanChannelOptions {
  readonly emitters: readonly Emitter[];
  /** Power sweeps, summed for the profile's channels; none unless given. */
  readonly sweeps?: readonly SweepLevels[];
  readonly profile: RadioProfile;
  /** The reference receiver, m; 20 unless given. */
  readonly distanceM?: number;
  /** Rows of the link table, m. */
  readonly distancesM?: readonly number[];
  readonly pathModel?: PathModel;
  readonly fadeLaw?: FadeLaw;
  /** Share of receiver positions to hold, 0..1; 0.99 unless given. */
  readonly reliability?: number;
  /** Share of time that may be worse, 0..1; 0.01 unless given. */
  readonly busyShareRatio?: number;
  /** Length of one Wi-Fi burst, ms; 2 unless given. */
  readonly burstMs?: number;
  /** The channel whose link is worked out; the recommended one, or the hop set, unless given. */
  readonly linkChannel?: number;
  /** Edges that the radio must stay within, MHz. */
  readonly bandMhz?: readonly [lowMhz: number, highMhz: number];
}

/** The setting of a plan, every default filled in. */
export type ReferenceSetting = Required<
  Omit<PlanChannelOptions, "emitters" | "sweeps" | "bandMhz" | "linkChannel">
>;

/** Default distances of a link table, m. */
export const DEFAULT_DISTANCES_M: readonly number[] = [5, 10, 15, 20, 30, 40, 60];

/** @returns the options with every default filled in */
export function referenceSetting(options: PlanChannelOptions): ReferenceSetting {
  return {
    profile: options.profile,
    distanceM: options.distanceM ?? 20,
    distancesM: options.distancesM ?? DEFAULT_DISTANCES_M,
    pathModel: options.pathModel ?? referencePathModel,
    fadeLaw: options.fadeLaw ?? referenceFadeLaw,
    reliability: options.reliability ?? 0.99,
    busyShareRatio: options.busyShareRatio ?? 0.01,
    burstMs: options.burstMs ?? 2,
  };
}
