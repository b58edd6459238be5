import { brickWall, transmitShapes } from "../band/index.js";
import type { Shape } from "../band/index.js";
import type { Figure } from "../radio/index.js";
import type { EmitterType } from "./venue-emitter.js";

/** What is known of a type of emitter where the venue file says nothing further. */
export interface EmitterKind {
  readonly shape: Figure<Shape>;
  readonly eirpDbm: Figure;
  /** Share of time on the air. */
  readonly airtimeRatio: Figure;
  /** Null: anywhere in the band. */
  readonly centreMhz: number | null;
  /** Spacing of its hop frequencies, MHz; null: it stays on one. */
  readonly hopStepMhz: number | null;
}

const TYPE_PLATE = "assumed; put the type plate's or data sheet's figure into the venue file";

const assumed = <T>(value: T, source = TYPE_PLATE): Figure<T> => ({ value, status: "assumed", source });
const standard = <T>(value: T, source: string): Figure<T> => ({ value, status: "standard", source });

/** A device of which only width, power and airtime are guessed. */
function generic(
  bandwidthMhz: number,
  eirpDbm: number,
  airtimeRatio: number,
  hopStepMhz: number | null = null,
): EmitterKind {
  return {
    shape: assumed(brickWall(bandwidthMhz)),
    eirpDbm: assumed(eirpDbm),
    airtimeRatio: assumed(airtimeRatio),
    centreMhz: null,
    hopStepMhz,
  };
}

const OVEN_CENTRE_MHZ = 2453;
/** Middles of the table's 6 MHz bands and their densities below the densest, −38 dBm/Hz. */
const OVEN_BANDS: readonly (readonly [mhz: number, levelDbr: number])[] = [
  [2363, -29.5],
  [2387, -29.5],
  [2393, -28],
  [2399, -26],
  [2405, -25],
  [2411, -24.5],
  [2417, -25],
  [2423, -24.5],
  [2429, -24.5],
  [2435, -20],
  [2441, -15.5],
  [2447, -6],
  [2453, 0],
  [2459, -7],
  [2465, -27],
  [2471, -29.5],
  [2477, -29.5],
];
const ovenShape: Shape = {
  points: OVEN_BANDS.map(([mhz, levelDbr]) => [mhz - OVEN_CENTRE_MHZ, levelDbr] as const),
};
const OVEN = "Taher, Misurac, LoCicero, Ucci, IEEE WCNC 2008, Fig. 3, as digitised in ns-3";

/**
 * Types of emitters with generic figures.
 * @source bluetooth, ieee-802.15.4: the standards' masks (see `transmitShapes`); microwave-oven: Taher et al.,
 *   IEEE WCNC 2008; everything else assumed
 * @example emitterKinds["microwave-oven"].airtimeRatio.value; // => 0.5
 */
export const emitterKinds: Readonly<Record<EmitterType, EmitterKind>> = {
  bluetooth: {
    ...generic(1, 4, 0.3, 1),
    shape: standard(transmitShapes.bluetoothBr, "Bluetooth Core Vol 2 Part A 3.2, from memory"),
  },
  "ieee-802.15.4": {
    ...generic(2, 10, 0.1),
    shape: standard(transmitShapes.oQpsk2450, "IEEE 802.15.4-2020 O-QPSK mask, from memory"),
  },
  "microwave-oven": {
    shape: standard(ovenShape, OVEN),
    eirpDbm: standard(31.6, `${OVEN}: the sum over its bands`),
    airtimeRatio: standard(0.5, "one magnetron is off for half of each mains cycle; read second-hand"),
    centreMhz: OVEN_CENTRE_MHZ,
    hopStepMhz: null,
  },
  "analogue-video": generic(18, 10, 1),
  "wireless-dmx": generic(1, 20, 0.2, 1),
  microphone: generic(2, 10, 0.5, 2),
  intercom: generic(2, 20, 0.3, 2),
  "camera-control": generic(2, 10, 0.1),
  "video-link": generic(20, 20, 0.9),
  "hearing-assistance": generic(2, 10, 0.5, 2),
  other: generic(20, 20, 1),
};
