import { brickWall, RADIO_BAND_MHZ } from "../band/index.js";
import type { Emitter } from "../band/index.js";
import type { RadioProfile } from "../radio/index.js";
import { emitterKinds } from "./emitter-kinds.js";
import type { EmitterKind } from "./emitter-kinds.js";
import type { VenueEmitter } from "./venue-emitter.js";

/** A device's signal as it leaves it: an emitter whose level is its radiated power, dBm EIRP. */
export type EmitterSignal = Emitter;

/** Hop frequencies lie within these, MHz. */
const HOPS_FROM_MHZ = 2402;
const HOPS_TO_MHZ = 2480;

/**
 * What another emitter sends, by its type's figures where the venue file has none of its own (see
 * `emitterKinds`). A stated bandwidth is taken as flat. A device that hops is one signal for each hop
 * frequency, of which at most one is on at a time: a contention group of its own, which no Wi-Fi channel has,
 * numbered below zero. A device that stays on one frequency that isn't known is taken as on every one at once:
 * never optimistic. All devices are independent of each other.
 * @param index tells the device's group from others'
 * @param profile of the planned radio: what a `wireless-dmx` device sends is taken from it
 * @see {@link venueSite}
 */
export function emitterSignals(device: VenueEmitter, index: number, profile: RadioProfile): EmitterSignal[] {
  const kind = device.type === "wireless-dmx" ? dmxKind(profile) : emitterKinds[device.type];
  const shape = device.bandwidthMhz === null ? kind.shape.value : brickWall(device.bandwidthMhz);
  const base = {
    id: device.name,
    shape,
    levelDbm: device.eirpDbm ?? kind.eirpDbm.value,
    airtimeRatio: device.airtimeRatio ?? kind.airtimeRatio.value,
    airtimeAssumed: device.airtimeRatio === null,
    contentionChannel: null,
  };
  const centreMhz = device.centreMhz ?? kind.centreMhz;
  if (centreMhz !== null) return [{ ...base, centreMhz }];
  return kind.hopStepMhz === null
    ? [everywhere(base, widthOf(device, kind))]
    : hops(base, Math.max(kind.hopStepMhz, device.bandwidthMhz ?? 0), -1 - index);
}

function dmxKind({ emission, txPowerDbm, txFeederLossDb, txGainDbi, ...profile }: RadioProfile): EmitterKind {
  const eirpDbm = txPowerDbm.value - txFeederLossDb.value + txGainDbi.value;
  const { packetMs, frameRateHz, transmissionsPerFrameCount } = profile;
  const airtime = (packetMs.value * frameRateHz.value * transmissionsPerFrameCount.value) / 1000;
  return {
    ...emitterKinds["wireless-dmx"],
    shape: emission,
    eirpDbm: { ...txPowerDbm, value: eirpDbm },
    airtimeRatio: { ...packetMs, value: Math.min(1, airtime) },
  };
}

function widthOf(device: VenueEmitter, kind: EmitterKind): number {
  if (device.bandwidthMhz !== null) return device.bandwidthMhz;
  const atTop = kind.shape.value.points
    .filter(([, levelDbr]) => levelDbr === 0)
    .map(([offsetMhz]) => offsetMhz);
  return atTop[atTop.length - 1]! - atTop[0]!;
}

/** The device's own density over the whole band. */
function everywhere(base: Omit<EmitterSignal, "centreMhz">, bandwidthMhz: number): EmitterSignal {
  const [lowMhz, highMhz] = RADIO_BAND_MHZ;
  const spreadDb = Math.max(0, 10 * Math.log10((highMhz - lowMhz) / bandwidthMhz));
  return {
    ...base,
    centreMhz: (lowMhz + highMhz) / 2,
    shape: brickWall(Math.max(bandwidthMhz, highMhz - lowMhz)),
    levelDbm: base.levelDbm + spreadDb,
  };
}

function hops(
  base: Omit<EmitterSignal, "centreMhz">,
  stepMhz: number,
  contentionChannel: number,
): EmitterSignal[] {
  const hopCount = Math.max(1, Math.floor((HOPS_TO_MHZ - HOPS_FROM_MHZ) / stepMhz + 1e-9) + 1);
  return Array.from({ length: hopCount }, (_, hop) => ({
    ...base,
    id: hopId(base.id, hop),
    centreMhz: HOPS_FROM_MHZ + hop * stepMhz,
    airtimeRatio: base.airtimeRatio / hopCount,
    // Assumed shares of one group add up, as hops do; reported ones would not.
    airtimeAssumed: true,
    contentionChannel,
  }));
}

const HOP = " on hop ";

function hopId(name: string, hop: number): string {
  return `${name}${HOP}${hop}`;
}

/** @returns the device's name, without the hop that `emitterSignals` adds */
export function deviceOf(emitterId: string, hopping: ReadonlySet<string>): string {
  const cut = emitterId.lastIndexOf(HOP);
  const name = cut < 0 ? emitterId : emitterId.slice(0, cut);
  return hopping.has(name) ? name : emitterId;
}
