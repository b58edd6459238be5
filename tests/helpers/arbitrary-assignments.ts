import { seededRandom } from "../../src/numeric/index.js";
import type { AssignmentProblem } from "../../src/venue/index.js";

/** A venue by chance: rooms with some busy stretch of band each, coupled over four decades. */
export function randomVenue(seed: number, systemCount: number, channelCount: number): AssignmentProblem {
  const random = seededRandom(seed);
  const each = <T>(make: (index: number) => T): T[] => Array.from({ length: systemCount }, (_, r) => make(r));
  const slopeDb = 8 + 12 * random();
  return {
    wantedDbm: each(() => -64 + 12 * random()),
    requiredCiDb: each(() => 8 + Math.floor(8 * random())),
    baseMw: each(() => {
      const [busy, width] = [channelCount * random(), 1 + 3 * random()];
      const busyMw = 10 ** (-7 + random());
      return Array.from(
        { length: channelCount },
        (_, c) => 1e-10 * (1 + random()) + busyMw * Math.exp(-(((c - busy) / width) ** 2)),
      );
    }),
    couplingMw: each((r) => each((o) => (r === o ? 0 : 10 ** (-9.5 + 4 * random())))),
    overlap: Array.from({ length: channelCount }, (_, k) =>
      Math.max(10 ** ((-slopeDb * k) / 10), 1e-5 * 0.9 ** k),
    ),
  };
}

/** Systems in one hall: nearly the same band and strong couplings for all. */
export function randomHall(seed: number, systemCount: number, channelCount: number): AssignmentProblem {
  const random = seededRandom(seed);
  const venue = randomVenue(seed, systemCount, channelCount);
  return {
    ...venue,
    wantedDbm: venue.wantedDbm.map(() => -58 + 2 * random()),
    requiredCiDb: venue.wantedDbm.map(() => 14),
    baseMw: venue.baseMw.map(() => venue.baseMw[0]!.map((powerMw) => powerMw * (1 + 0.2 * random()))),
    couplingMw: venue.couplingMw.map((row, r) =>
      row.map((_, o) => (r === o ? 0 : 1e-6 * (1 + 2 * random()))),
    ),
  };
}

/**
 * A venue whose systems have several receivers each, their rows mixed: what a receiver hears of the band and of the
 * others differs from its system's other receivers'.
 */
export function randomReceivers(seed: number, systemCount: number, channelCount: number): AssignmentProblem {
  const random = seededRandom(seed);
  const ends = Array.from({ length: systemCount }, () => 1 + Math.floor(4 * random()));
  const systemOf = ends.flatMap((count, r) => Array<number>(count).fill(r));
  for (let k = systemOf.length - 1; k > 0; k--) {
    const other = Math.floor((k + 1) * random());
    [systemOf[k], systemOf[other]] = [systemOf[other]!, systemOf[k]!];
  }
  const rows = randomVenue(seed, systemOf.length, channelCount);
  return {
    ...rows,
    systemOf,
    couplingMw: rows.couplingMw.map((row, k) =>
      ends.map((_, o) => (systemOf[k] === o ? 0 : row[(k + o + 1) % row.length]! || 1e-8)),
    ),
  };
}

/** The same with caps and allowances, so that values are equal often. */
export function withCaps(problem: AssignmentProblem, seed: number): AssignmentProblem {
  const random = seededRandom(seed);
  return {
    ...problem,
    capDb: problem.wantedDbm.map(() => 4 * Math.floor(1 + 5 * random())),
    allowanceDb: problem.wantedDbm.map(() => 2 * Math.floor(3 * random())),
  };
}
