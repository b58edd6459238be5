// A process of its own: times rankChannels on a seeded instance, prints { firstMs, medianMs } as JSON.
import { transmitShapes, wifiChannelCentreMhz } from "stillband/band";
import { findProfile } from "stillband/radio";
import { rankChannels } from "stillband/scorer";
import { median, seeded } from "./statistics.js";

const [seed, emitterCount, callCount] = process.argv.slice(2).map(Number);
const WIFI_CHANNEL_COUNT = 13;
const WARM_UP_CALLS = 20;

function instance() {
  const random = seeded(seed);
  const shapes = [transmitShapes.dsss22, transmitShapes.erpOfdm20, transmitShapes.ht20, transmitShapes.he20];
  return Array.from({ length: emitterCount }, (_, index) => {
    const channel = (index % WIFI_CHANNEL_COUNT) + 1;
    return {
      id: `emitter-${index}`,
      centreMhz: wifiChannelCentreMhz(channel),
      shape: shapes[Math.floor(random() * shapes.length)],
      levelDbm: Math.round(-90 + 50 * random()),
      airtimeRatio: 0.02 + 0.2 * random(),
      airtimeAssumed: random() < 0.7,
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
