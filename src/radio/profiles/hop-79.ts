import { rasterChannels } from "../channel-plan.js";
import type { RadioProfile } from "../profile.js";
import { gfskFigures } from "./gfsk-figures.js";
import { standard } from "./shared-figures.js";

const leastHopCount = standard(
  15,
  "15 at least: 47 CFR 15.247 (with 125 mW at most below 75) and EN 300 328 (adaptive, 15 always kept)",
);

/** Seventy-nine hop frequencies 1 MHz apart: hop k at 2402 + k MHz, k = 0 … 78. */
export const hop79: RadioProfile = {
  name: "hop-79",
  title: "Frequency hopping over 79 frequencies, 1 Mb/s GFSK",
  generic: true,
  channels: rasterChannels({ channel: 0, centreMhz: 2402, spacingMhz: 1, channelCount: 79 }),
  channelsOrigin: {
    status: "standard",
    source: "Bluetooth Core Vol 2 Part A Table 2.1: 2402 + k MHz, k = 0 to 78",
  },
  hopping: { avoids: false, leastHopCount },
  ...gfskFigures,
};

/** The same, with ranges kept out of the hop set. */
export const hop79Avoid: RadioProfile = {
  ...hop79,
  name: "hop-79-avoid",
  title: "Frequency hopping over 79 frequencies, busy ranges kept out, 1 Mb/s GFSK",
  hopping: { avoids: true, leastHopCount },
};
