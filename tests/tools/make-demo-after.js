/**
 * Writes what the demo venue's crew brings back after install: readings at the receivers, and a scan of the hall.
 * Usage: node tests/tools/make-demo-after.js [FOLDER]   (default: fixtures)
 *
 * Readings: a level for each receiver, worked out by hand from 18 dBm, the antennas and N = 22 and moved by a few dB;
 * the antenna of H10 hangs loose, 25 dB down, and S4 was left for another day. Scan: the rows of the empty house of
 * ropewalk-empty.csv in the hall, four weeks later, each level moved by at most 1 dB from a seed; a ticket office has
 * put up an access point of its own beside the stage, and the house has moved one of its own. Same bytes on every run.
 */
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

const SEED = "eye splice, short splice 7";
const FIXTURES = join(import.meta.dirname, "../../fixtures");
const FOLDER = resolve(process.argv[2] ?? FIXTURES);

/** Receiver, system, readings in dBm: two where the crew moved the lift half a metre. */
const READINGS = [
  ["H1", "hall", [-45, -48]],
  ["H2", "hall", [-38]],
  ["H3", "hall", [-53, -50]],
  ["H4", "hall", [-49]],
  ["H5", "hall", [-44, -47]],
  ["H6", "hall", [-56]],
  ["H7", "hall", [-50, -53]],
  ["H8", "hall", [-54]],
  ["H9", "hall", [-57, -54]],
  ["H10", "hall", [-81, -80]],
  ["H11", "hall", [-57]],
  ["H12", "hall", [-56, -60]],
  ["H13", "hall", [-60]],
  ["F1", "foyer", [-44]],
  ["F2", "foyer", [-40, -43]],
  ["F3", "foyer", [-49]],
  ["bar box", "foyer", [-43]],
  ["S1", "studio", [-35]],
  ["S2", "studio", [-32]],
  ["S3", "studio", [-41]],
];
const START = Date.parse("2026-03-28T09:10:00Z");
const MINUTE_MS = 60_000;

const readings = READINGS.flatMap(([receiver, system, levels]) =>
  levels.map((level) => [receiver, system, level]),
);
const readingRows = readings.map(([receiver, system, level], index) =>
  ["lift", receiver, system, "yes", level, "", isoTime(START + index * 6 * MINUTE_MS)].join(","),
);
write("readings/ropewalk-after.csv", [
  "stage,receiver,transmitter,heard,received_dbm,quality,time",
  ...readingRows,
]);

const WEEKS_4_MS = 28 * 24 * 60 * MINUTE_MS;
const [head, ...surveyed] = readFileSync(join(FIXTURES, "scans/ropewalk-empty.csv"), "utf8")
  .trim()
  .split("\n");
const hall = surveyed.filter((row) => /^[^,]*,hall /.test(row)).map(later);
const looks = [...new Set(hall.map((row) => row.split(",").slice(0, 3).join(",")))];
/** Level at the hall's three places. */
const TICKETS_DBM = { "hall front": -55, "hall stage": -43, "hall balcony": -58 };
const tickets = looks.map((look) => {
  const levelDbm = TICKETS_DBM[look.split(",")[1]] + draw(`tickets ${look}`);
  return `${look},0e:77:1a:05:33:18,tickets at the dock,3,2422,20,${levelDbm},0.310,6,n`;
});
write("scans/ropewalk-later.csv", [head, ...[...hall, ...tickets].sort()]);

/** The same row four weeks on. */
function later(row) {
  const fields = /^([^,]*)(,.*,)(-\d+)(,[^,]*,[^,]*,[^,]*)$/.exec(row);
  const [, time, middle, levelDbm, rest] = fields;
  const when = isoTime(Date.parse(time) + WEEKS_4_MS);
  return `${when}${moved(middle)}${Number(levelDbm) + draw(row)}${rest}`;
}

/** The house's access point in the rigging went from Wi-Fi ch 11 to 6, with all its names. */
function moved(middle) {
  return /,0[26]:5e:1c:40:13:b.,/.test(middle) ? middle.replace(/,11,2462,20,$/, ",6,2437,20,") : middle;
}

/** @returns -1, 0 or 1, the same for the same words */
function draw(words) {
  return (createHash("sha256").update(`${SEED}|${words}`).digest()[0] % 3) - 1;
}

function isoTime(timeMs) {
  return new Date(timeMs).toISOString().replace(".000", "");
}

function write(name, lines) {
  mkdirSync(join(FOLDER, name, ".."), { recursive: true });
  writeFileSync(join(FOLDER, name), `${lines.join("\n")}\n`);
}
