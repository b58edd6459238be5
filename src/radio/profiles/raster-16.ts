import { transmitShapes } from "../../band/index.js";
import { rasterChannels } from "../channel-plan.js";
import type { RadioProfile } from "../profile.js";
import { stepShape } from "../step-shape.js";
import { assumed, sharedFigures, standard } from "./shared-figures.js";

/** The sixteen IEEE 802.15.4 channels, 11 … 26 at 2405 … 2480 MHz, O-QPSK. */
export const raster16: RadioProfile = {
  ...sharedFigures,
  name: "raster-16",
  title: "Fixed channel, the 16 IEEE 802.15.4 channels, O-QPSK",
  generic: true,
  channels: rasterChannels({ channel: 11, centreMhz: 2405, spacingMhz: 5, channelCount: 16 }),
  channelsOrigin: { status: "standard", source: "IEEE 802.15.4: 2405 + 5(k - 11) MHz, k = 11 to 26" },
  hopping: null,
  requiredCiDb: assumed(5),
  bandwidthMhz: standard(2, "IEEE 802.15.4 O-QPSK at 2450 MHz: 2 Mchip/s"),
  sensitivityDbm: standard(-85, "IEEE 802.15.4 O-QPSK minimum, from memory; receivers do better"),
  selectivity: assumed(
    stepShape([
      [1, 0],
      [7.5, -20],
      [100, -35],
    ]),
  ),
  emission: standard(
    transmitShapes.oQpsk2450,
    "IEEE 802.15.4 O-QPSK mask: -20 dBr beyond 3.5 MHz (from memory); straight line from 1 MHz assumed",
  ),
};
