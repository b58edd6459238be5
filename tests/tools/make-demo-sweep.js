/**
 * Writes the demo venue's power sweep: the full house at `hall front`, as the scan of that evening heard it,
 * and what no beacon tells: a cordless intercom near 2478 MHz.
 * Usage: node tests/tools/make-demo-sweep.js [FOLDER]   (default: fixtures/scans)
 *
 * 1 MHz bins, five hops of 20 MHz a pass, a pass every half minute. In each pass a Wi-Fi channel is idle or has
 * one of its sources on, by their airtime; a source's power lies flat over its 20 or 40 MHz.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { parse } from "csv-parse/sync";
import { seeded } from "../bench/statistics.js";

const FOLDER = join(import.meta.dirname, "../../fixtures/scans");
const SEED = 20_260_307;
const PASS_COUNT = 40;
const START_MS = Date.UTC(2026, 2, 7, 19, 45);
/** The sweeping receiver's own noise in 1 MHz: −114 dBm and a noise figure of 8 dB. */
const NOISE_DBM = -106;
const PLACE = "hall front";

/** The loudest name of each radio heard at the place, by Wi-Fi channel. */
function sources(folder) {
  const rows = parse(readFileSync(join(folder, "ropewalk-full.csv")), { columns: true });
  const radios = new Map();
  for (const row of rows) {
    if (row.place !== PLACE || Number(row.channel) > 14) continue;
    const key = `${row.channel} ${row.bssid.slice(3, 16)}`;
    const levelDbm = Number(row.signal_dbm);
    if (levelDbm <= (radios.get(key)?.levelDbm ?? -Infinity)) continue;
    const primaryMhz = 2407 + 5 * Number(row.channel);
    const widthMhz = row.width_mhz === "40" ? 40 : 20;
    const centreMhz = Number(row.centre_mhz) || primaryMhz;
    const airtimeRatio = row.airtime_ratio === "" ? 0.05 : Number(row.airtime_ratio) / 3;
    radios.set(key, { channel: Number(row.channel), levelDbm, widthMhz, centreMhz, airtimeRatio });
  }
  return [...radios.values()];
}

/** Who is on in one pass: of each channel's sources at most one, the loudest first. */
function onAir(radios, random) {
  const taken = new Set();
  return radios
    .slice()
    .sort((a, b) => b.levelDbm - a.levelDbm)
    .filter(({ channel, airtimeRatio }) => {
      const isOn = !taken.has(channel) && random() < airtimeRatio;
      if (isOn) taken.add(channel);
      return isOn;
    });
}

/** @returns the text of the demo's sweep */
export function demoSweep(folder = FOLDER) {
  const random = seeded(SEED);
  const radios = sources(folder);
  const lines = [];
  for (let pass = 0; pass < PASS_COUNT; pass++) {
    const active = onAir(radios, random);
    const intercomMhz = random() < 0.7 ? 2476 + Math.floor(5 * random()) : 0;
    for (let hop = 0; hop < 5; hop++) {
      const lowMhz = 2400 + 20 * hop;
      const stamp = new Date(START_MS + pass * 30_000 + hop * 200).toISOString();
      const levels = Array.from({ length: 20 }, (_, bin) => {
        const middleMhz = lowMhz + bin + 0.5;
        let mw = 10 ** ((NOISE_DBM + 3 * (random() - 0.5)) / 10);
        for (const { levelDbm, widthMhz, centreMhz } of active)
          if (Math.abs(middleMhz - centreMhz) < widthMhz / 2) mw += 10 ** (levelDbm / 10) / widthMhz;
        if (lowMhz + bin === intercomMhz) mw += 10 ** (-58 / 10);
        return (10 * Math.log10(mw)).toFixed(2);
      });
      const span = [lowMhz * 1e6, (lowMhz + 20) * 1e6, "1000000.00", 64];
      lines.push([stamp.slice(0, 10), stamp.slice(11, 19), ...span, ...levels].join(", "));
    }
  }
  return `${lines.join("\n")}\n`;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href)
  writeFileSync(join(process.argv[2] ?? FOLDER, "ropewalk-full-sweep.csv"), demoSweep());
