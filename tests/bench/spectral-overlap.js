import { brickWall, spectralOverlapDb, transmitShapes } from "stillband/band";
import { findProfile } from "stillband/radio";
import { median } from "./statistics.js";

const GRID_STEP_MHZ = 0.25;
const GRID_END_MHZ = 100;
const OFFSETS_MHZ = Array.from({ length: 121 }, (_, index) => index - 60);
const ROUNDS = 11;
const LEAST_RATIO = 1;

/** Level on the straight lines of a shape, as a ratio of powers; nothing outside. */
function densityAt({ points }, offsetMhz) {
  const end = points.findIndex(([edgeMhz]) => edgeMhz > offsetMhz);
  if (end <= 0) return 0;
  const [startMhz, startDb] = points[end - 1];
  const [endMhz, endDb] = points[end];
  return 10 ** ((startDb + ((offsetMhz - startMhz) / (endMhz - startMhz)) * (endDb - startDb)) / 10);
}

/** The same integral by the midpoints of a 0.25 MHz grid, written for its own sake and not for speed. */
function gridOverlapDb(emitter, receiver, offsetMhz) {
  let taken = 0;
  let total = 0;
  for (let mhz = -GRID_END_MHZ + GRID_STEP_MHZ / 2; mhz < GRID_END_MHZ; mhz += GRID_STEP_MHZ) {
    const density = densityAt(emitter, mhz);
    total += density;
    taken += density * densityAt(receiver, mhz - offsetMhz);
  }
  return 10 * Math.log10(taken / total);
}

function cases() {
  const profiles = ["raster-13", "raster-16"].map((name) => findProfile(name).selectivity.value);
  const receivers = [brickWall(1), brickWall(2), ...profiles];
  return Object.values(transmitShapes).flatMap((emitter) =>
    receivers.flatMap((receiver) => OFFSETS_MHZ.map((offsetMhz) => [emitter, receiver, offsetMhz])),
  );
}

/** @returns overlaps a second, the median of some rounds over all cases */
function perSecond(overlapDb, all, roundCount) {
  const rates = Array.from({ length: roundCount }, () => {
    const startedMs = performance.now();
    for (const [emitter, receiver, offsetMhz] of all) overlapDb(emitter, receiver, offsetMhz);
    return (all.length / (performance.now() - startedMs)) * 1000;
  });
  return median(rates.slice(1));
}

/** Closed-form overlaps a second beside those of a grid, and how wrong the grid is. */
export function run() {
  const all = cases();
  const errorsDb = all.map((one) => Math.abs(gridOverlapDb(...one) - spectralOverlapDb(...one)));
  const own = perSecond(spectralOverlapDb, all, ROUNDS);
  const grid = perSecond(gridOverlapDb, all, 3);
  const meanDb = errorsDb.reduce((sum, errorDb) => sum + errorDb, 0) / errorsDb.length;
  return {
    name: "spectral overlaps, closed form ÷ 0.25 MHz grid",
    own: `${thousands(own)}/s`,
    reference: `${thousands(grid)}/s`,
    ratio: own / grid,
    goal: `≥ ${LEAST_RATIO}`,
    met: own / grid >= LEAST_RATIO && errorsDb.every(Number.isFinite),
    note:
      `${all.length} overlaps of every transmit shape with four receivers, offsets −60…60 MHz; ` +
      `the grid is off by up to ${Math.max(...errorsDb).toFixed(3)} dB, ${meanDb.toFixed(4)} dB on average`,
  };
}

function thousands(rate) {
  return `${Math.round(rate / 1000)} k`;
}
