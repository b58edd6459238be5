import type { FigureKey } from "./profile-figures.js";
import { figureReaders } from "./profile-figures.js";
import type { ValueReader } from "./profile-values.js";

/** What each figure of a profile is, for whoever fills one in. */
export const figureMeanings: Readonly<Record<FigureKey, string>> = {
  requiredCiDb: "Carrier to interference that a packet needs; the data sheet's co-channel rejection",
  bandwidthMhz: "Noise bandwidth of the receiver",
  noiseFigureDb: "Noise figure of the receiver; leave it where the data sheet is silent",
  sensitivityDbm: "Weakest level that the receiver still reads",
  selectivity: "Receiver selectivity: 0 dB in the passband, beyond it minus the adjacent-channel rejection",
  emission: "What the transmitter puts beside its channel, dB below its own level",
  txPowerDbm: "Power at the transmitter's antenna socket (100 mW is 20 dBm)",
  txFeederLossDb: "Loss of the cable between transmitter and antenna",
  txGainDbi: "Gain of the transmitter's antenna",
  rxGainDbi: "Gain of the receiver's antenna",
  enclosure: "What the receiver's antenna sits in",
  enclosureLossDb: "Loss of that housing; measure it with the canopy open and closed",
  packetMs: "Time on the air of one packet that carries one universe's frame",
  transmissionsPerFrameCount: "Times that each frame is sent; 1 is no repeat",
  frameRateHz: "DMX frames a second that the radio carries for each universe",
  universesPerTransmitterCount: "Universes that one transmitter carries, each with its own packets",
  receiversFollow: "Whether receivers find a new radio channel by themselves; if not, each needs a visit",
  relinkS: "Time until they have found it; null where unknown",
};

/**
 * What a figure may be, in words.
 * @returns what the figure must be, in words
 * @example figureExpectation("txPowerDbm"); // => "a power in dBm from -60 to 40"
 */
export function figureExpectation(key: FigureKey): string {
  let words = "";
  const read = figureReaders[key] as ValueReader<unknown>;
  read(NaN, key, (_path, _raw, expected) => {
    words = expected;
  });
  return words;
}
