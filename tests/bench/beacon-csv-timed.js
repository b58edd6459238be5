// Prints as JSON how long readScan and csv-parse take for one and the same scan CSV.
// Usage: node tests/bench/beacon-csv-timed.js SEED ROWS ROUNDS, after `npm run build`.
import { parse } from "csv-parse/sync";
import { readScan } from "stillband/scan";
import { median, seeded } from "./statistics.js";

const [seed, rowCount, roundCount] = process.argv.slice(2).map(Number);
const bytes = Buffer.from(scanCsv(seed, rowCount));
const own = [];
const reference = [];
let ownCount = 0;
let referenceCount = 0;
for (let round = 0; round <= roundCount; round++) {
  let startedMs = performance.now();
  ownCount = (await readScan(bytes, { source: "bench.csv" })).readings.length;
  const ownMs = performance.now() - startedMs;
  startedMs = performance.now();
  referenceCount = parse(bytes, { columns: true }).length;
  const referenceMs = performance.now() - startedMs;
  if (round === 0) continue;
  own.push(ownMs);
  reference.push(referenceMs);
}
console.log(
  JSON.stringify({
    byteCount: bytes.length,
    ownCount,
    referenceCount,
    ownMs: median(own),
    referenceMs: median(reference),
  }),
);

/** A walk through a house: 60 sources, each heard at every stop at a level of its own. */
function scanCsv(seed, rowCount) {
  const random = seeded(seed);
  const sources = Array.from({ length: 60 }, (_, index) => ({
    bssid: `02:1a:00:00:${(index >> 4).toString(16).padStart(2, "0")}:${(index * 4).toString(16).padStart(2, "0")}`,
    name: index % 7 === 0 ? "" : `Ropewalk ${index}`,
    channel: 1 + (index % 13),
    level: -40 - Math.floor(random() * 45),
  }));
  const lines = [
    "time,place,crowd,bssid,ssid,channel,centre_mhz,width_mhz,signal_dbm,airtime_ratio,stations,standard",
  ];
  for (let row = 0; row < rowCount; row++) {
    const { bssid, name, channel, level } = sources[row % sources.length];
    const stop = Math.floor(row / sources.length);
    const time = new Date(1_773_511_200_000 + stop * 20_000).toISOString();
    const dbm = level + Math.round(random() * 80 - 40) / 10;
    const airtime = row % 3 === 0 ? (Math.round(random() * 255) / 255).toFixed(3) : "";
    lines.push(
      `${time},place ${stop % 12},part,${bssid},${name},${channel},${2407 + 5 * channel},20,${dbm},${airtime},,n`,
    );
  }
  return `${lines.join("\n")}\n`;
}
