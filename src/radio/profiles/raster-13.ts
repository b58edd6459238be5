import { rasterChannels } from "../channel-plan.js";
import type { RadioProfile } from "../profile.js";
import { gfskFigures } from "./gfsk-figures.js";

/** The default: thirteen fixed channels on the 5 MHz raster, 2412 … 2472 MHz. */
export const raster13: RadioProfile = {
  name: "raster-13",
  title: "Fixed channel, 13 channels 5 MHz apart, 1 Mb/s GFSK",
  generic: true,
  channels: rasterChannels({ channel: 1, centreMhz: 2412, spacingMhz: 5, channelCount: 13 }),
  channelsOrigin: {
    status: "assumed",
    source: "thirteen channels: common practice, no source; the 5 MHz raster 2412-2472 MHz: assumed",
  },
  hopping: null,
  ...gfskFigures,
};
