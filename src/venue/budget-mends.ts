import type { Antenna } from "../propagation/index.js";
import { receiverChannel } from "./receiver-channel.js";
import type { BudgetSetting, ReceiverChannel } from "./receiver-channel.js";
import type { TransmitterPlace, VenueReceiver } from "./venue-system.js";

/** What would better a receiver's budget, and by how much: its budget worked out again. */
export interface BudgetMend {
  readonly code:
    "raise-transmitter" | "other-channel" | "other-antenna" | "second-transmitter" | "antenna-out";
  /** Working margin after it. */
  readonly workingMarginDb: number;
  /** dB more; null where there was no level at all before. */
  readonly helpDb: number | null;
  /** Of the transmitter above its floor, where it moves. */
  readonly heightM: number | null;
  readonly channel: number;
  readonly transmitter: TransmitterPlace;
}

/** What a receiver's mends are tried on. */
export interface MendQuery {
  readonly transmitter: TransmitterPlace;
  readonly receiver: VenueReceiver;
  /** On the channel that is judged. */
  readonly now: ReceiverChannel;
  /** Channels that might be used instead, worked out already. */
  readonly others: readonly ReceiverChannel[];
  /** Where a second transmitter might stand. */
  readonly places: readonly TransmitterPlace[];
}

/** Heights that a transmitter is raised to, m above its floor: on a stand, on a bar, on the truss. */
const HEIGHTS_M = [3, 4.5, 6];
/** A transmitter stays this far under the ceiling, m (assumed). */
const UNDER_CEILING_M = 0.3;
/** What brings less isn't worth the visit, dB (assumed). */
const LEAST_HELP_DB = 0.5;
/** A panel as many are (assumed): 8 dBi, 70° by 60°. */
const PANEL = { kind: "panel", gainDbi: 8, azimuthBeamwidthDeg: 70, elevationBeamwidthDeg: 60 } as const;

/**
 * @returns the best of each kind that brings half a decibel or more, the most first
 * @see {@link venueSite}
 */
export function budgetMends(setting: BudgetSetting, query: MendQuery): BudgetMend[] {
  const { transmitter, receiver, now, others, places } = query;
  const at = (place: TransmitterPlace, box = receiver): ReceiverChannel =>
    receiverChannel(setting, place, box, now);
  const mend = (code: BudgetMend["code"], place: TransmitterPlace, then: ReceiverChannel): BudgetMend => {
    const after = then.budget.workingMarginDb;
    const before = now.budget.workingMarginDb;
    const heightM = code === "raise-transmitter" || code === "second-transmitter" ? place.heightM : null;
    const helpDb = before === -Infinity ? null : after - before;
    return { code, workingMarginDb: after, helpDb, heightM, channel: then.channel, transmitter: place };
  };
  const tried = [
    ...raised(setting, transmitter).map((place) => mend("raise-transmitter", place, at(place))),
    ...others.map((other) => mend("other-channel", transmitter, other)),
    ...otherAntennas(transmitter, receiver).map((place) => mend("other-antenna", place, at(place))),
    ...places.map((place) => mend("second-transmitter", place, at(place))),
    mend("antenna-out", transmitter, at(transmitter, { ...receiver, enclosure: "antenna-outside" })),
  ];
  const best = new Map<BudgetMend["code"], BudgetMend>();
  for (const one of tried) {
    const known = best.get(one.code);
    if (known === undefined || one.workingMarginDb > known.workingMarginDb) best.set(one.code, one);
  }
  return [...best.values()]
    .filter(
      ({ helpDb, workingMarginDb }) =>
        (helpDb ?? workingMarginDb) > -Infinity && (helpDb ?? 1) >= LEAST_HELP_DB,
    )
    .sort((a, b) => b.workingMarginDb - a.workingMarginDb);
}

function raised({ site }: BudgetSetting, transmitter: TransmitterPlace): TransmitterPlace[] {
  const room = site.venue.rooms.find(({ name }) => name === transmitter.room);
  const mostM = room === undefined ? Infinity : room.heightM - UNDER_CEILING_M;
  return HEIGHTS_M.filter((heightM) => heightM > transmitter.heightM && heightM <= mostM).map((heightM) => ({
    ...transmitter,
    heightM,
    at: { ...transmitter.at, z: transmitter.at.z + heightM - transmitter.heightM },
  }));
}

function otherAntennas(transmitter: TransmitterPlace, receiver: VenueReceiver): TransmitterPlace[] {
  const [dx, dy] = [receiver.at.x - transmitter.at.x, receiver.at.y - transmitter.at.y];
  const dz = receiver.at.z - transmitter.at.z;
  const toDeg = 180 / Math.PI;
  const panel: Antenna = {
    ...PANEL,
    azimuthDeg: Math.atan2(dy, dx) * toDeg,
    tiltDeg: -Math.atan2(dz, Math.hypot(dx, dy)) * toDeg,
  };
  const known = transmitter.antenna?.kind;
  const antennas: Antenna[] = known === "panel" ? [panel] : [{ kind: "dipole" }, panel];
  return antennas.map((antenna) => ({ ...transmitter, antenna }));
}
