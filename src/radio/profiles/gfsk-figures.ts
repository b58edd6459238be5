import type { RadioProfile } from "../profile.js";
import { receiverSelectivity, stepShape } from "../step-shape.js";
import { assumed, sharedFigures, standard } from "./shared-figures.js";

/**
 * Figures of a 1 Mb/s GFSK radio, the Bluetooth BR class.
 * @source selectivity: C/I 11, 0, −30, −40 dB at 0, 1, 2, ≥ 3 MHz, Bluetooth RF.TS p34 Table 4.6
 */
export const gfskFigures = {
  ...sharedFigures,
  requiredCiDb: assumed(
    14,
    "11 dB is Bluetooth RF.TS p34 Table 4.6 at a bit error ratio of 1e-3; 3 dB more assumed for 1 % loss of an uncoded 4.5 ms packet",
  ),
  bandwidthMhz: standard(1, "Bluetooth Core Vol 2 Part A, 1 MHz channels"),
  sensitivityDbm: assumed(
    -90,
    "kTB -114 dBm + noise figure 10 dB + C/I 14 dB; put your data sheet's figure here",
  ),
  selectivity: standard(
    receiverSelectivity([
      [0.5, 11],
      [1.5, 0],
      [2.5, -30],
      [100, -40],
    ]),
    "Bluetooth RF.TS p34 Table 4.6 (C/I 11, 0, -30, -40 dB), as steps",
  ),
  emission: standard(
    stepShape([
      [0.5, 0],
      [1.5, -20],
      [2.5, -38],
      [100, -58],
    ]),
    "Bluetooth Core Vol 2 Part A 3.2, BR limits at 18 dBm, from memory",
  ),
} as const satisfies Partial<RadioProfile>;
