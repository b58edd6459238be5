/**
 * Writes the demo venue's walk test: the hall's transmitter read along the hall, into the foyer and the dock.
 * Usage: node tests/tools/make-demo-walk.js [FOLDER]   (default: fixtures/readings)
 *
 * Level = 4 dBm (turned down to 0, antennas 2 + 2) − (41 dB at 1 m + 26 dB per decade of distance) + scatter of
 * 3 dB, in whole dB; below −76 dBm nothing is heard. Every draw is a hash of the seed and of the spot: same bytes
 * on every run.
 */
import { createHash } from "node:crypto";
import { mkdirSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

const SEED = "hawser, cleat and caulk 3";
const FOLDER = resolve(process.argv[2] ?? join(import.meta.dirname, "../../fixtures/readings"));
const LOSSLESS_DBM = 4;
const MODEL = { lossDb: 41, exponent: 2.6, sigmaDb: 3 };
const FLOOR_DBM = -76;

/** Spot, distance in m from the booth's antenna, 3-D. */
const SPOTS = [
  ["balcony rail", 2.1],
  ["balcony stair", 3.2],
  ["balcony bench", 4.6],
  ["row T", 6.3],
  ["row R", 7.4],
  ["row P", 8.8],
  ["row M", 10.5],
  ["row K", 12.2],
  ["row H", 14],
  ["row F", 16.4],
  ["row D", 18.1],
  ["row B", 20.3],
  ["stage lip", 22.5],
  ["stage left", 24.7],
  ["stage right", 25.9],
  ["stage rear", 28.4],
  ["dock doors", 31],
  ["dock", 35.5],
  ["dock rear", 39],
  ["yard gate", 44.5],
];

/** @returns a number in (0, 1), the same for the same words */
function draw(words) {
  const bytes = createHash("sha256").update(`${SEED}|${words}`).digest();
  return (bytes.readUIntBE(0, 6) + 0.5) / 2 ** 48;
}

/** A normal draw by the polar form of two uniform ones (G. E. P. Box, M. E. Muller, 1958). */
function scatterDb(words) {
  const radius = Math.sqrt(-2 * Math.log(draw(`${words}|radius`)));
  return MODEL.sigmaDb * radius * Math.cos(2 * Math.PI * draw(`${words}|angle`));
}

/** Two readings a spot, half a metre apart. */
const rows = SPOTS.flatMap(([spot, distanceM], index) =>
  [0, 1].map((look) => {
    const lossDb = MODEL.lossDb + 10 * MODEL.exponent * Math.log10(distanceM) + scatterDb(`${spot}|${look}`);
    // Someone stood in front of the antenna.
    const strayDb = spot === "row T" && look === 1 ? 17 : 0;
    const levelDbm = Math.round(LOSSLESS_DBM - lossDb - strayDb);
    const minutes = String(10 + index * 2 + look).padStart(2, "0");
    const level = levelDbm < FLOOR_DBM ? "not heard" : String(levelDbm);
    return `2026-02-18T14:${minutes}:00Z,${spot},hall,${distanceM},${level},${FLOOR_DBM}`;
  }),
);

mkdirSync(FOLDER, { recursive: true });
writeFileSync(
  join(FOLDER, "ropewalk-walk.csv"),
  `${["time,receiver,transmitter,distance_m,received_dbm,floor_dbm", ...rows].join("\n")}\n`,
);
