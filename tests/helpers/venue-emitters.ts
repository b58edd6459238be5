import { transmitShapes } from "../../src/band/index.js";
import type { Emitter } from "../../src/band/index.js";

/** An HT20 access point on a Wi-Fi channel. */
export function accessPoint(channel: number, given: Partial<Emitter> = {}): Emitter {
  return {
    id: `wifi-${channel}`,
    centreMhz: 2407 + 5 * channel,
    shape: transmitShapes.ht20,
    levelDbm: -45,
    airtimeRatio: 0.3,
    airtimeAssumed: true,
    contentionChannel: channel,
    ...given,
  };
}
