import { describe, expect, test } from "vitest";
import { hopBlocks } from "../../src/report/hop-blocks.js";
import { score } from "../helpers/scores.js";
import { inProcess, FULL } from "../cli/stillband.js";
import type { ChannelJson } from "../cli/json-types.js";

type Ranking = Parameters<typeof hopBlocks>[0];
const hop = (
  channel: number,
  marginDb: number,
  clearAirRatio: number,
  given: object = {},
): ReturnType<typeof score> =>
  score(channel, marginDb, null, { centreMhz: 2402 + channel, clearAirRatio, ...given });

describe("hop frequencies in blocks of 5 MHz", () => {
  test("least margin, mean clear air, how many are kept", () => {
    const ranking = [hop(4, 9, 1), hop(0, 5, 0.9), hop(2, -3, 0.4), hop(1, -7, 0.6)] as unknown as Ranking;
    expect(hopBlocks(ranking, new Set([0, 4]))).toEqual([
      // 2402, 2403, 2404 MHz and 2406 MHz
      {
        fromMhz: 2402,
        toMhz: 2404,
        hopCount: 3,
        keptCount: 1,
        leastMarginDb: -7,
        clearAirRatio: expect.closeTo(1.9 / 3, 12) as number,
      },
      { fromMhz: 2406, toMhz: 2406, hopCount: 1, keptCount: 1, leastMarginDb: 9, clearAirRatio: 1 },
    ]);
  });
  test("what no scan covers or the band leaves out is not judged", () => {
    const ranking = [
      hop(0, 5, 1),
      hop(1, -50, 0, { spokenBy: null }),
      hop(8, -50, 0, { allowed: false, reason: "leaves the band" }),
    ] as unknown as Ranking;
    const [first, second] = hopBlocks(ranking, new Set([0]));
    expect(first).toMatchObject({ hopCount: 2, leastMarginDb: 5, clearAirRatio: 1 });
    expect(second).toMatchObject({ keptCount: 0, leastMarginDb: null, clearAirRatio: null });
  });
});

test("channel shows the blocks under the hop set, as the ranking has them", async () => {
  const args = ["channel", "--profile", "hop-79-avoid", FULL];
  const { ranking, hopSet } = JSON.parse((await inProcess([...args, "--json"])).out) as ChannelJson;
  const { out } = await inProcess(args);
  const told = [
    ...out.matchAll(/^(24\d\d)(?:–(24\d\d))? +(in|out|\d of \d in) +(-?[\d.]+) dB +([\d.]+) %$/gm),
  ];
  expect(told).toHaveLength(17); // 2402–2404, 2405–2409 … 2480
  for (const [, from, to = from, word, margin, clear] of told) {
    const own = ranking.filter(({ centreMhz }) => centreMhz >= Number(from) && centreMhz <= Number(to));
    const kept = own.filter(({ channel }) => hopSet!.channels.includes(channel)).length;
    expect(word).toBe(kept === 0 ? "out" : kept === own.length ? "in" : `${kept} of ${own.length} in`);
    expect(margin).toBe(Math.min(...own.map(({ marginDb }) => marginDb)).toFixed(1));
    const mean = own.reduce((sum, { clearAirRatio }) => sum + clearAirRatio, 0) / own.length;
    expect(Math.abs(Number(clear) - 100 * mean)).toBeLessThan(0.0101);
  }
});
