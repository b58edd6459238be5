/** Empty against full: sources by hand, margins against the ranking of each crowd's scans alone. */
import { describe, expect, test } from "vitest";
import { tooWide } from "../cli/columns.js";
import type { ChannelJson } from "../cli/json-types.js";
import { scanCsv } from "../cli/scan-rows.js";
import type { Row } from "../cli/scan-rows.js";
import { schemaFaults } from "../cli/schemas.js";
import { scratch } from "../cli/scratch.js";
import { EMPTY, firstBlock, FULL, inProcess, SCANS } from "../cli/stillband.js";

const { file } = scratch();
const SWEEP = ["--place", "hall front", "--crowd", "full", `${SCANS}/ropewalk-full-sweep.csv`];

interface ChangeJson {
  readonly change: {
    readonly from: string;
    readonly to: string;
    readonly sources: readonly {
      readonly emitter: string;
      readonly before: { readonly levelDbm: number; readonly airtimeRatio: number } | null;
      readonly after: { readonly levelDbm: number; readonly airtimeRatio: number } | null;
      readonly levelChangeDb: number | null;
      readonly airtimeChangeRatio: number;
    }[];
    readonly channels: readonly {
      readonly channel: number;
      readonly beforeDb: number | null;
      readonly afterDb: number | null;
      readonly changeDb: number | null;
      readonly afterSpokenBy: string | null;
    }[];
    readonly bestBeforeChannel: number | null;
    readonly bestAfterChannel: number | null;
    readonly hopSet: { readonly beforeDb: number; readonly afterDb: number } | null;
    readonly caveats: readonly string[];
  } | null;
  readonly changeReason: string | null;
}

async function survey(args: readonly string[]): Promise<ChangeJson> {
  const { code, out } = await inProcess(["survey", "--json", ...args]);
  expect(code).toBe(0);
  expect(schemaFaults("survey", JSON.parse(out))).toEqual([]);
  return JSON.parse(out) as ChangeJson;
}

async function ranking(args: readonly string[]): Promise<ChannelJson> {
  return JSON.parse((await inProcess(["channel", "--json", ...args])).out) as ChannelJson;
}

const row = (crowd: string, given: Row): Row => ({
  crowd,
  place: "hall",
  ssid: "lantern",
  standard: "n",
  ...given,
});
const A = "02:00:00:00:10:01";
const B = "02:00:00:00:20:01";
const TWO = file(
  "two.csv",
  scanCsv([
    row("empty", { bssid: A, channel: 1, signal: -60, airtime: 0.2 }),
    row("part", { bssid: A, channel: 1, signal: -30, airtime: 0.9 }),
    row("full", { bssid: A, channel: 1, signal: -57, airtime: 0.55 }),
    row("full", { bssid: B, channel: 11, signal: -50, airtime: 0.4 }),
  ]),
);

describe("what changed, by hand", () => {
  test("the emptiest against the fullest, what lies between left out", async () => {
    const { change } = await survey([TWO]);
    expect([change!.from, change!.to]).toEqual(["empty", "full"]);
    const [b, a] = [B, A].map((address) => change!.sources.find(({ emitter }) => emitter === address)!);
    expect([a!.levelChangeDb, b!.levelChangeDb]).toEqual([3, null]);
    expect(a!.airtimeChangeRatio).toBeCloseTo(0.35, 12);
    expect(b!.airtimeChangeRatio).toBeCloseTo(0.4, 12);
    expect(b!.before).toBeNull();
    // The level of the only source in radio ch 1 rises by 3 dB, far above the noise: its margin falls by as much.
    const one = change!.channels.find(({ channel }) => channel === 1)!;
    expect(one.changeDb).toBeCloseTo(-3, 1);
    expect(one.changeDb).toBeCloseTo(one.afterDb! - one.beforeDb!, 12);
  });
  test("the text says so under the crowd table, in 80 columns", async () => {
    const { out } = await inProcess(["survey", TWO]);
    expect(tooWide(out, 80)).toEqual([]);
    expect(out.indexOf("What the crowd changed, empty to full")).toBeGreaterThan(out.indexOf("By crowd"));
    expect(out).toMatch(/Sources: 1 came, 0 went, 0 moved/);
    expect(out).toMatch(/1 +-60 +-57 +\+3 dB +20 % +55 % +\+35 pt +"lantern"/);
    expect(out).toMatch(/11 +- +-50 +- +40 % +\+40 pt/);
    expect(firstBlock(out).join("\n")).toMatch(/^Crowd +empty to full: band busy \d+ % to \d+ %/m);
    expect(firstBlock(out).length).toBeLessThanOrEqual(8);
  });
});

describe("what it does to the ranking", () => {
  test.each([
    { name: "beacon lists", args: [EMPTY, FULL], after: [FULL] },
    { name: "a sweep when full", args: [EMPTY, FULL, ...SWEEP], after: [FULL, ...SWEEP] },
    {
      name: "another radio, another region",
      args: ["--profile", "raster-16", "--region", "EU", EMPTY, FULL],
      after: ["--profile", "raster-16", "--region", "EU", FULL],
    },
  ])("$name: each crowd's margins are those of channel with its scans alone", async ({ args, after }) => {
    const radio = after.filter((word) => word !== FULL && !SWEEP.includes(word));
    const { change } = await survey(args);
    const [was, is] = [await ranking([...radio, EMPTY]), await ranking(after)];
    expect(change!.channels).toHaveLength(was.ranking.length);
    for (const { channel, beforeDb, afterDb } of change!.channels) {
      const of = ({ ranking: ranks }: ChannelJson): number =>
        ranks.find((score) => score.channel === channel)!.marginDb;
      expect([beforeDb, afterDb]).toEqual([of(was), of(is)]);
    }
    expect([change!.bestBeforeChannel, change!.bestAfterChannel]).toEqual([
      was.recommended.channel,
      is.recommended.channel,
    ]);
  });
  test("a hopping radio: the hop set's median margin, that of channel with each crowd's scans alone", async () => {
    const hop = ["--profile", "hop-79"];
    const { change } = await survey([...hop, EMPTY, FULL]);
    const [was, is] = [await ranking([...hop, EMPTY]), await ranking([...hop, FULL])];
    expect(change!.hopSet).toEqual({ beforeDb: was.hopSet!.marginDb, afterDb: is.hopSet!.marginDb });
    const { out } = await inProcess(["survey", ...hop, EMPTY, FULL]);
    expect(tooWide(out, 80)).toEqual([]);
    expect(out).toMatch(/the 16 that lost the most of 79/);
  });
  test("a sweep in one of the two only: said, and by which evidence each margin is", async () => {
    const { change } = await survey([EMPTY, FULL, ...SWEEP]);
    expect(change!.caveats.join("\n")).toMatch(/Power sweeps only when full/);
    expect(change!.channels.some(({ afterSpokenBy }) => afterSpokenBy === "sweep")).toBe(true);
    expect((await survey([EMPTY, FULL])).change!.caveats).toEqual([]);
  });
  test("a list when empty and a sweep when full: margins, but no source came or went", async () => {
    const { change } = await survey([EMPTY, ...SWEEP]);
    expect(change!.sources).toEqual([]);
    expect(change!.caveats.join("\n")).toMatch(/Beacon lists only when empty/);
    const { out } = await inProcess(["survey", EMPTY, ...SWEEP]);
    expect(out).not.toMatch(/came|went/);
    expect(tooWide(out, 80)).toEqual([]);
  });
});

test.each([
  ["one crowd", [FULL]],
  [
    "a crowd and a scan that names none",
    [FULL, file("blank.csv", scanCsv([{ bssid: A, channel: 1, signal: -60 }]))],
  ],
  ["relative levels when full", [EMPTY, "--crowd", "full", `${SCANS}/dialects/sweep-wide-relative.csv`]],
])("%s: no comparison, and why", async (_, args) => {
  const { change, changeReason } = await survey(args);
  expect(change).toBeNull();
  expect(changeReason).toMatch(/two named crowds/);
  expect((await inProcess(["survey", ...args])).out).not.toMatch(/What the crowd changed|^Crowd /m);
});
