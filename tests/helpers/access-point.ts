import { transmitShapes } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";

/** A 20 MHz access point on a Wi-Fi channel that reports 30 % of airtime. */
export function accessPoint(id: string, channel: number, levelDbm: number): Emitter {
  return {
    id,
    centreMhz: 2407 + 5 * channel,
    shape: transmitShapes.ht20,
    levelDbm,
    airtimeRatio: 0.3,
    airtimeAssumed: false,
    contentionChannel: channel,
  };
}
