// A process of its own: times assignChannels on seeded venues of growing size, prints rows as JSON.
import { assignChannels } from "stillband/venue";
import { seeded } from "./statistics.js";

const [seed, limitS, ...sizes] = process.argv.slice(2).map(Number);
const CHANNELS = 13;
const ACROSS = 8;
const PITCH_M = 18;
/** 1 MHz GFSK systems on a 5 MHz raster: neighbours some 15 dB down, then 25, 35, at last −40. */
const OVERLAP = Array.from({ length: CHANNELS }, (_, k) => [1, 0.03, 0.003, 0.0003][k] ?? 1e-4 * 0.9 ** k);

/**
 * Rooms 18 m apart in rows of eight, every other row half a room aside: six neighbours within about 20 m. 10 dBm
 * through 2.2-exponent indoor loss and a wall of 12 dB each 16 m. Each room has its own busy stretch of the band.
 */
function venue(systemCount) {
  const random = seeded(seed);
  for (let k = 0; k < 10; k++) random();
  const each = (make) => Array.from({ length: systemCount }, (_, r) => make(r));
  const places = each((r) => {
    const row = Math.floor(r / ACROSS);
    return [(r % ACROSS) + (row % 2) / 2, (row * Math.sqrt(3)) / 2].map((at) => PITCH_M * at + 2 * random());
  });
  return {
    wantedDbm: each(() => -52 - 12 * random()),
    requiredCiDb: each(() => 14),
    baseMw: each(() => {
      const [busy, width, busyMw] = [CHANNELS * random(), 1 + 3 * random(), 10 ** (-6 - random())];
      return Array.from(
        { length: CHANNELS },
        (_, c) => 1e-10 * (1 + random()) + busyMw * Math.exp(-(((c - busy) / width) ** 2)),
      );
    }),
    couplingMw: each((r) =>
      each((o) => (r === o ? 0 : 10 ** (couplingDbm(places[r], places[o], random()) / 10))),
    ),
    overlap: OVERLAP,
  };
}

function couplingDbm([x, y], [u, v], chance) {
  const distanceM = Math.hypot(x - u, y - v);
  return 10 - 40 - 22 * Math.log10(distanceM) - 12 * Math.floor(distanceM / 16) - 3 * chance;
}

function timed(problem, refine) {
  const startedMs = performance.now();
  const plan = assignChannels(problem, {
    refine,
    nodeLimitCount: Infinity,
    timeLimitS: limitS,
    nowMs: () => performance.now(),
  });
  return { plan, ms: performance.now() - startedMs };
}

timed(venue(6), true);
const rows = sizes.map((systemCount) => {
  const problem = venue(systemCount);
  const { plan, ms } = timed(problem, false);
  const whole = timed(problem, true);
  const { provedCount } = whole.plan;
  return {
    systemCount,
    ms,
    gapDb: plan.boundDb - plan.minMarginDb,
    optimal: plan.optimal,
    wholeMs: whole.ms,
    provedCount,
  };
});
console.log(JSON.stringify(rows));
