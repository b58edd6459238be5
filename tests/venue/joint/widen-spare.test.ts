import { describe, expect, it } from "vitest";
import { assignmentLoads, loadsOf } from "../../../src/venue/channels/assignment-loads.js";
import { widenSpare } from "../../../src/venue/joint/widen-spare.js";
import { assignChannels } from "../../../src/venue/index.js";
import type { AssignmentProblem } from "../../../src/venue/index.js";
import { randomVenue } from "../../helpers/arbitrary-assignments.js";

const OVERLAP = [1, 0.01, 0.001, 0.0001, 0.00001, 0.000001];
/** Systems alike, a flat band, 30 dB over the noise but for 10 dB of sensitivity. */
const flat = (systemCount: number): AssignmentProblem => ({
  wantedDbm: Array<number>(systemCount).fill(-60),
  requiredCiDb: Array<number>(systemCount).fill(14),
  baseMw: Array.from({ length: systemCount }, () => Array<number>(6).fill(10 ** -10.4)),
  couplingMw: Array.from({ length: systemCount }, (_, r) =>
    Array.from({ length: systemCount }, (_unused, o) => (r === o ? 0 : 1e-6)),
  ),
  overlap: OVERLAP,
  capDb: Array<number>(systemCount).fill(10),
});
const widened = (problem: AssignmentProblem): { found: number[]; wide: number[] } => {
  const { assignment } = assignChannels(problem);
  const interferenceOnly = { ...problem, capDb: undefined };
  const wide = widenSpare(assignmentLoads(problem), assignmentLoads(interferenceOnly), assignment);
  return { found: assignment, wide };
};
const valuesDb = (problem: AssignmentProblem, channels: readonly number[]): number[] =>
  Array.from(loadsOf(assignmentLoads(problem), channels), (load) => -10 * Math.log10(load));

describe("more to spare over interference, among plans that sensitivity makes equal", () => {
  it("sends two systems as far apart as the band allows, where a few channels would do", () => {
    const { found, wide } = widened(flat(2));
    expect(Math.abs(found[0]! - found[1]!)).toBeLessThan(5);
    // From the fourth channel on the other lies so far below the noise that half a decibel can't be had.
    expect(Math.abs(wide[0]! - wide[1]!)).toBeGreaterThanOrEqual(4);
  });
  it("keeps the smallest value, gives up at most 0.25 dB of any, and never has less to spare at the weakest", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const problem = { ...randomVenue(seed, 5, 7), capDb: [3, 5, 5, 8, 8] };
      const { found, wide } = widened(problem);
      const [before, after] = [valuesDb(problem, found), valuesDb(problem, wide)];
      expect(Math.min(...after)).toBeGreaterThanOrEqual(Math.min(...before) - 1e-8);
      after.forEach((value, r) => expect(value).toBeGreaterThanOrEqual(before[r]! - 0.25 - 1e-9));
      const bare = { ...problem, capDb: undefined };
      expect(Math.min(...valuesDb(bare, wide))).toBeGreaterThan(Math.min(...valuesDb(bare, found)) - 0.5);
    }
  });
  it("leaves a system on a channel that is settled", () => {
    const { wide } = widened({ ...flat(2), fixedChannels: [2, 3] });
    expect(wide).toEqual([2, 3]);
  });
});
