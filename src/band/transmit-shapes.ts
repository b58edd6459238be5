import { mirroredShape } from "./shape.js";
import type { Shape, ShapePoint } from "./shape.js";

/** The masks have no end; their last level is held this far from the centre, MHz. */
const SKIRT_END_MHZ = 100;

/** @returns a shape from one side of a mask, its last level held to the end of the skirt */
function mask(rightHalf: readonly ShapePoint[]): Shape {
  const lastLevelDbr = rightHalf[rightHalf.length - 1]![1];
  return mirroredShape([...rightHalf, [SKIRT_END_MHZ, lastLevelDbr]]);
}

/**
 * Transmit spectra from the published masks: flat in the occupied band, the mask's own limit in the
 * skirts. They are the worst legal skirts, not a typical transmitter; a DSSS centre is up to 3 dB denser
 * than the flat block drawn here.
 * @source dsss22: IEEE 802.11-2020 cl. 15.4.5.5, 16.3.7.4 (−30 and the 11 and 22 MHz corners from memory)
 * @source erpOfdm20: cl. 17.3.9.3; ht20, ht40: cl. 19.3.18.1; he20, he40: 802.11ax-2021 cl. 27.3.19.1
 * @source oQpsk2450: IEEE 802.15.4-2020, −20 dBr beyond 3.5 MHz (memory), 2 MHz occupied; the straight line between is assumed
 * @source bluetoothBr, bluetoothLe1m: Core Vol 2 Part A 3.2.2 (memory), Vol 6 Part A 3.2.2, for a 0 dBm transmitter
 * @example transmitShapes.ht20.points.length; // => 10
 */
export const transmitShapes = {
  dsss22: mask([
    [0, 0],
    [11, 0],
    [11, -30],
    [22, -30],
    [22, -50],
  ]),
  erpOfdm20: mask([
    [0, 0],
    [9, 0],
    [11, -20],
    [20, -28],
    [30, -40],
  ]),
  ht20: mask([
    [0, 0],
    [9, 0],
    [11, -20],
    [20, -28],
    [30, -45],
  ]),
  ht40: mask([
    [0, 0],
    [19, 0],
    [21, -20],
    [40, -28],
    [60, -45],
  ]),
  he20: mask([
    [0, 0],
    [9.75, 0],
    [10.25, -20],
    [20, -28],
    [30, -40],
  ]),
  he40: mask([
    [0, 0],
    [19.5, 0],
    [20.5, -20],
    [40, -28],
    [60, -40],
  ]),
  oQpsk2450: mask([
    [0, 0],
    [1, 0],
    [3.5, -20],
  ]),
  bluetoothBr: mask([
    [0, 0],
    [0.5, 0],
    [0.5, -20],
    [2.5, -20],
    [2.5, -40],
  ]),
  bluetoothLe1m: mask([
    [0, 0],
    [1, 0],
    [1, -20],
    [2.5, -20],
    [2.5, -30],
  ]),
} as const satisfies Record<string, Shape>;

/** Name of a built-in transmit shape. */
export type TransmitShapeName = keyof typeof transmitShapes;
