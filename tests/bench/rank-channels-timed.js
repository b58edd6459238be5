// A process of its own: times rankChannels on a seeded instance, prints { firstMs, medianMs } as JSON.
import { transmitShapes, wifiChannelCentreMhz } from "stillband/band";
import { findProfile } from "stillband/radio";
import { rankChannels } from "stillband/scorer";
import { median, seeded } from "./statistics.js";

const [seed, emitterCount, callCount] = process.argv.slice(2).map(Number);
const WIFI_CHANNEL_COUNT = 13;
const WARM_UP_CALLS = 20;

/** As a survey of a busy block gives them: more weak than strong, 3 in 10 report their load, the rest as assumed. */
function instance() {
  const random = seeded(seed);
  const shapes = [transmitShapes.dsss22, transmitShapes.erpOfdm20, transmitShapes.ht20, transmitShapes.he20];
  return Array.from({ length: emitterCount }, (_, index) => {
    const channel = (index % WIFI_CHANNEL_COUNT) + 1;
    const levelDbm = Math.round(-92 + 47 * random() ** 2);
    const airtimeAssumed = random() < 0.7;
    return {
      id: `emitter-${index}`,
      centreMhz: wifiChannelCentreMhz(channel),
      shape: shapes[Math.floor(random() * shapes.length)],
      levelDbm,
      airtimeRatio: airtimeAssumed ? (levelDbm >= -75 ? 0.25 : 0.1) : 0.05 + 0.55 * random(),
      airtimeAssumed,
      contentionChannel: channel,
    };
  });
}

function timedMs(work) {
  const startedMs = performance.now();
  work();
  return performance.now() - startedMs;
}

const emitters = instance();
const profile = findProfile("raster-13");
const rank = () => rankChannels({ emitters, profile, wantedDbm: -56 });
const firstMs = timedMs(rank);
for (let call = 0; call < WARM_UP_CALLS; call++) rank();
const medianMs = median(Array.from({ length: callCount }, () => timedMs(rank)));
console.log(JSON.stringify({ firstMs, medianMs, rankedCount: rank().ranking.length }));
