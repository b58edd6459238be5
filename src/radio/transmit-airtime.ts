import type { RadioProfile } from "./profile.js";

/**
 * Share of time that a transmitter is on the air: packet × transmissions of a frame × universes × frames a
 * second. Above 1 the figures can't all be true.
 * @returns share of time on the air, 0..1
 * @example transmitAirtimeRatio(findProfile("raster-13")).toFixed(3); // => "0.198"
 */
export function transmitAirtimeRatio(
  profile: Pick<
    RadioProfile,
    "packetMs" | "transmissionsPerFrameCount" | "universesPerTransmitterCount" | "frameRateHz"
  >,
): number {
  const packetsPerSecond =
    profile.transmissionsPerFrameCount.value *
    profile.universesPerTransmitterCount.value *
    profile.frameRateHz.value;
  return (profile.packetMs.value / 1000) * packetsPerSecond;
}
