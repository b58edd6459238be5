import { transmitShapes } from "../band/index.js";
import type { Shape } from "../band/index.js";
import type { WifiStandard } from "./reading.js";

/**
 * The transmit spectrum of a Wi-Fi source: b DSSS; g or a ERP-OFDM; n and ac HT, ax and be HE of the scanned
 * width; unknown HT.
 * @param widthMhz 20 or 40; a 40 MHz source is taken at 40 MHz all the time
 * @example wifiShape("n", 20) === transmitShapes.ht20; // => true
 */
export function wifiShape(standard: WifiStandard, widthMhz: 20 | 40): Shape {
  if (standard === "b") return transmitShapes.dsss22;
  if (standard === "g" || standard === "a") return transmitShapes.erpOfdm20;
  if (standard === "ax" || standard === "be")
    return widthMhz === 40 ? transmitShapes.he40 : transmitShapes.he20;
  return widthMhz === 40 ? transmitShapes.ht40 : transmitShapes.ht20;
}
