import { transmitShapes, wifiChannelCentreMhz } from "../band/index.js";
import type { Emitter, Shape } from "../band/index.js";
import { isWide } from "./on-wifi-channel.js";

/** The mask of each 40 MHz transmission at 20 MHz. */
const AT_20_MHZ: ReadonlyMap<Shape, Shape> = new Map([
  [transmitShapes.ht40, transmitShapes.ht20],
  [transmitShapes.he40, transmitShapes.he20],
]);

/** A 40 MHz Wi-Fi source set to 20 MHz on its primary channel; any other as it is. */
export function narrowed(emitter: Emitter): Emitter {
  const shape = AT_20_MHZ.get(emitter.shape);
  if (shape === undefined || !isWide(emitter)) return emitter;
  return { ...emitter, shape, centreMhz: wifiChannelCentreMhz(emitter.contentionChannel!)! };
}
