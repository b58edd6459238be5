import { expect, test } from "vitest";
import { placeOnChannel, wifiChannelAtMhz } from "../../src/scan/channel-placement.js";

// Centres 2407 + 5n MHz, channel 14 at 2484: IEEE 802.11-2020 Annex E, as in ns-3's operating-channel table.
test.each([
  [2412, 1],
  [2437, 6],
  [2472, 13],
  [2484, 14],
  [2413, 1],
  [2411, 1],
  [2483, 14],
])("%d MHz is Wi-Fi channel %d", (centreMhz, channel) => expect(wifiChannelAtMhz(centreMhz)).toBe(channel));

test.each([2407, 2477, 2413.5, 2410.9, 2400, 2500, 2485.1, Number.NaN])(
  "%d MHz is no Wi-Fi channel",
  (centreMhz) => {
    expect(wifiChannelAtMhz(centreMhz)).toBeNull();
  },
);

// 40 MHz centre = primary ± 10 MHz: 802.11-2020 clause 19.3.15, from memory; the side: the project's own rule.
test.each([
  [6, null, 20, 2437, false],
  [6, 2438, 20, 2438, false],
  [6, 2447, 40, 2447, false],
  [6, 2427, 40, 2427, false],
  [6, 2428, 40, 2428, false],
  [6, 2437, 40, 2447, true],
  [7, null, 40, 2452, true],
  [8, null, 40, 2437, true],
  [8, 2448, 40, 2437, true],
  [14, null, 20, 2484, false],
] as const)(
  "channel %d, centre %s, %d MHz wide: %d MHz, assumed %s",
  (channel, centre, width, centreMhz, assumed) => {
    expect(placeOnChannel(channel, centre, width)).toEqual({
      channel,
      centreMhz,
      widthMhz: width,
      centreAssumed: assumed,
    });
  },
);

test.each([
  [6, 2438.1, 20],
  [6, 2447, 20],
  [6, 2448.1, 40],
  [6, 2442, 40],
  [0, null, 20],
  [15, null, 20],
] as const)("channel %d, centre %s, %d MHz wide contradict", (channel, centre, width) =>
  expect(placeOnChannel(channel, centre, width)).toBeNull(),
);
