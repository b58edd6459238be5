import { transmissionSuccessRatio } from "../quality/index.js";
import type { RadioProfile } from "../radio/index.js";
import { clearAirRatio, harmfulShares, sweptClearAirRatio } from "../scorer/index.js";
import type { ChannelMerit } from "../scorer/index.js";

/** What a transmission on one channel meets at one position. */
export interface PositionSuccess {
  readonly receivedDbm: number;
  /** By beacon lists and sweeps together: the smaller. */
  readonly clearAirRatio: number;
  readonly successRatio: number;
  /** Which gave the success ratio: where both cover the channel, the smaller. */
  readonly spokenBy: "beacons" | "sweep";
  /** What the beacon lists alone say. */
  readonly beacons: { readonly clearAirRatio: number; readonly harmfulRatios: readonly number[] };
}

/** What is on the air on one channel at one receiver, and the wanted level there. */
export type JudgedAir = Pick<ChannelMerit, "distribution" | "swept" | "wantedDbm">;

/**
 * The share of transmissions that get through on one channel at a position, by the beacon lists and by the
 * sweeps that cover it: the smaller counts.
 * @param burstMs length of one Wi-Fi burst, ms
 * @param fadeDb how far the position lies below the local mean, dB
 */
export function positionSuccess(
  { distribution, swept, wantedDbm }: JudgedAir,
  profile: RadioProfile,
  burstMs: number,
  fadeDb: number,
): PositionSuccess {
  const receivedDbm = wantedDbm - fadeDb;
  const ceilingDbm = receivedDbm - profile.requiredCiDb.value;
  const success = (clearRatio: number, harmfulRatios: readonly number[]): number =>
    transmissionSuccessRatio({
      clearAirRatio: clearRatio,
      harmfulRatios,
      packetMs: profile.packetMs.value,
      burstMs,
      receivedDbm,
      sensitivityDbm: profile.sensitivityDbm.value,
    });
  const byBeacons = clearAirRatio(distribution, ceilingDbm);
  const beacons = { clearAirRatio: byBeacons, harmfulRatios: harmfulShares(distribution, ceilingDbm) };
  const beaconSuccess = success(byBeacons, beacons.harmfulRatios);
  const bySweep = sweptClearAirRatio(swept, ceilingDbm);
  if (bySweep === null)
    return {
      receivedDbm,
      clearAirRatio: byBeacons,
      successRatio: beaconSuccess,
      spokenBy: "beacons",
      beacons,
    };
  // A sweep tells no groups apart: its busy share counts as one group's bursts.
  const sweepSuccess = success(bySweep, bySweep < 1 ? [1 - bySweep] : []);
  return {
    receivedDbm,
    clearAirRatio: Math.min(byBeacons, bySweep),
    successRatio: Math.min(beaconSuccess, sweepSuccess),
    spokenBy: sweepSuccess < beaconSuccess ? "sweep" : "beacons",
    beacons,
  };
}
