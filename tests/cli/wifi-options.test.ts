/** Wi-Fi that moves, the request, and what we do to Wi-Fi, as the command tells them. */
import { describe, expect, test } from "vitest";
import { tooWide } from "./columns.js";
import { schemaFaults } from "./schemas.js";
import { scratch } from "./scratch.js";
import { scanCsv } from "./scan-rows.js";
import { DEMO, firstBlock, FOYER, FULL, inProcess, SCANS } from "./stillband.js";

interface Fix {
  readonly emitter: string;
  readonly names: readonly string[];
  readonly wifiChannel: number;
  readonly place: string;
  readonly levelDbm: number;
}
interface WifiJson {
  readonly ranking: readonly {
    readonly channel: number;
    readonly marginDb: number;
    readonly ifWifiMovesDb: number;
  }[];
  readonly recommended: { readonly channel: number };
  readonly wifiMoves: {
    readonly buildingCount: number;
    readonly recommendedHolds: boolean | null;
    readonly survivor: { readonly channel: number } | null;
    readonly fix: readonly Fix[];
  };
  readonly request: {
    readonly fix: readonly Fix[];
    readonly marginIfGrantedDb: number;
    readonly radiates: {
      readonly eirpDbm: number;
      readonly airtimeRatio: number;
      readonly airtimeCapped: boolean;
    };
  };
  readonly neighbours: {
    readonly apPowerDbm: number;
    readonly airtimeCapped: boolean;
    readonly channels: readonly { readonly wifiChannel: number; readonly strongestDbm: number }[];
  };
  readonly issues: readonly { readonly code: string; readonly value?: string }[];
}

const { file } = scratch();
const json = async (args: readonly string[]): Promise<WifiJson> => {
  const value: unknown = JSON.parse((await inProcess(["channel", "--json", ...args])).out);
  expect(schemaFaults("channel", value)).toEqual([]);
  return value as WifiJson;
};
const text = async (args: readonly string[]): Promise<string> => {
  const { code, out } = await inProcess(["channel", ...args]);
  expect(code).toBe(0);
  expect(tooWide(out, 80)).toEqual([]);
  return out;
};
/** The lines of a section, its title apart. */
const part = (out: string, title: string): string[] => {
  const lines = out.split("\n");
  const start = lines.findIndex((line) => line.startsWith(title));
  expect(start, title).toBeGreaterThanOrEqual(0);
  return lines.slice(start + 1, lines.indexOf("", start));
};

describe("if Wi-Fi moves", () => {
  test("each channel's figure stands beside its margin, in text as in JSON", async () => {
    const [out, { ranking }] = [await text(DEMO), await json(DEMO)];
    const rows = part(out, "Radio channels, best first");
    expect(rows[0]).toMatch(/margin +if moved +clear air/);
    for (const [index, { marginDb, ifWifiMovesDb }] of ranking.entries())
      expect(rows[index + 1]).toMatch(
        new RegExp(`\\) +${marginDb.toFixed(1)} dB +${ifWifiMovesDb.toFixed(1).replace("-0.0", "0.0")} dB`),
      );
  });
  test("marking all as neighbours undoes it, marking one back brings that one", async () => {
    const survey = JSON.parse((await inProcess(["survey", "--json", FOYER])).out) as {
      emitters: { emitter: string; levelDbm: number }[];
    };
    const marks = survey.emitters.flatMap(({ emitter }) => ["--neighbour-wifi", emitter.split("@")[0]!]);
    const none = await json([FOYER, ...marks]);
    expect(none.wifiMoves.buildingCount).toBe(0);
    for (const { marginDb, ifWifiMovesDb } of none.ranking) expect(ifWifiMovesDb).toBe(marginDb);
    expect(none.wifiMoves.survivor?.channel).toBe(none.recommended.channel);
    const weak = survey.emitters.find(({ levelDbm }) => levelDbm < -75)!;
    const more = await json([FOYER, "--building-wifi", weak.emitter]);
    expect(more.wifiMoves.buildingCount).toBe((await json([FOYER])).wifiMoves.buildingCount + 1);
  });
  test("a mark that names nothing is told", async () => {
    const { issues } = await json([FOYER, "--building-wifi", "attic net"]);
    expect(issues.some(({ code, value }) => code === "ignored" && value === "attic net")).toBe(true);
  });
  test("the owner loses its question mark where it was said", async () => {
    const marked = part(await text([FULL, "--building-wifi", "Quillmere Guest"]), "Behind radio ch").join(
      "\n",
    );
    expect(marked).toMatch(/building +1 +"Quillmere Guest"/);
    expect(part(await text([FULL]), "Behind radio ch").join("\n")).toMatch(
      /building\? +1 +"Quillmere Guest"/,
    );
  });
  test("the opening block says what to do in few words: fix them, or let them move", async () => {
    const told = await json(DEMO);
    const count = told.request.fix.length;
    expect(count).toBeGreaterThan(0);
    expect(firstBlock(await text(DEMO)).join("\n")).toContain(`have ${count} Wi-Fi radios fixed as listed`);
    const quiet = file(
      "quiet.csv",
      scanCsv([{ bssid: "02:00:00:00:00:01", ssid: "q", channel: 6, signal: -74 }]),
    );
    const { wifiMoves, recommended } = await json([quiet, "--distance", "5m"]);
    expect(wifiMoves.recommendedHolds).toBe(true);
    expect(firstBlock(await text([quiet, "--distance", "5m"])).join("\n")).toMatch(
      `let Wi-Fi move: radio ch ${recommended.channel} holds`,
    );
  });
  test("that a sweep can't be moved is said where there is one", async () => {
    const swept = part(await text([FULL, `${SCANS}/ropewalk-full-sweep.csv`]), "If Wi-Fi moves").join(" ");
    expect(swept).toMatch(/sweep .*can't be moved/);
    expect(part(await text([FULL]), "If Wi-Fi moves").join(" ")).not.toMatch(/sweep/);
  });
});

describe("the request to the network staff", () => {
  test("names each radio's address, Wi-Fi channel, level and place, and none of a neighbour's", async () => {
    const args = [...DEMO, "--neighbour-wifi", "Maja's pocket net"];
    const { request } = await json(args);
    const lines = part(await text(args), "Request to the network staff");
    for (const { emitter, wifiChannel, place, levelDbm } of request.fix) {
      const line = lines.find((one) => one.includes(emitter.split("@")[0]!))!;
      expect(line).toMatch(new RegExp(`^${wifiChannel} as now`));
      expect(line).toContain(`${levelDbm.toFixed(0)} dBm`);
      expect(line).toContain(place);
    }
    expect(lines.join("\n")).not.toContain("Maja");
  });
  test("holds every point: width, automatics, 2.4 GHz off, and what we radiate", async () => {
    const lines = part(await text(DEMO), "Request to the network staff")
      .join(" ")
      .replace(/\s+/g, " ");
    for (const words of [
      "20 MHz wide",
      "automatic channel and automatic power off",
      "2.4 GHz off in and beside",
    ])
      expect(lines).toContain(words);
    // 18 + 2 dBm, 4.5 ms × 44 a second.
    expect(lines).toMatch(/at 2422 MHz, 1 MHz wide, 20\.0 dBm EIRP, on the air 20 % of the time/);
  });
  test("nothing clear: the step asks for the list where that makes the link work, else for a channel", async () => {
    const crowded = [`${SCANS}/crowded.csv`];
    const { request } = await json(crowded);
    // 11.5 dB of fade allowance: Rician, K = 6 dB, 99 % (10 dB hold at 98.35 %, 15 dB at 99.64 %)
    expect(request.marginIfGrantedDb).toBeGreaterThan(11.6);
    expect(firstBlock(await text(crowded)).join("\n")).toContain(
      `1 ask network staff to fix ${request.fix.length} radios as listed;`,
    );
    const far = [...crowded, "--distance", "60m"];
    expect((await json(far)).request.marginIfGrantedDb).toBeLessThan(11.5);
    expect(firstBlock(await text(far)).join("\n")).toContain("1 ask the network staff to clear Wi-Fi ch");
  });
  test("more packets than time are flagged", async () => {
    const args = [FOYER, "--set", "packet_ms=12", "--set", "transmissions_per_frame_count=3"];
    const { request, neighbours } = await json(args);
    expect(request.radiates).toMatchObject({ airtimeRatio: 1, airtimeCapped: true });
    expect(neighbours.airtimeCapped).toBe(true);
    expect(part(await text(args), "Request").join(" ")).toMatch(/add up to more/);
  });
});

describe("what we do to Wi-Fi", () => {
  test.each([
    ["demo", DEMO],
    ["crowded", [`${SCANS}/crowded.csv`]],
    ["hopping", [FULL, "--profile", "hop-79"]],
  ])("%s: at most eight lines", async (_, args) => {
    const lines = part(await text(args), "What we do to Wi-Fi");
    expect(lines.length).toBeGreaterThan(3);
    expect(lines.length).toBeLessThanOrEqual(8);
  });
  test("an access point of 3 dB more power hears us 3 dB less", async () => {
    const levels = async (power: string): Promise<number[]> =>
      (await json([FOYER, "--ap-power-dbm", power])).neighbours.channels.map(
        ({ strongestDbm }) => strongestDbm,
      );
    const [usual, more] = [await levels("18"), await levels("21")];
    for (const [index, levelDbm] of usual.entries()) expect(levelDbm - more[index]!).toBeCloseTo(3, 9);
  });
  test("a power that no access point has is refused with what was expected", async () => {
    const { code, err } = await inProcess(["channel", "--ap-power-dbm", "18W", FOYER]);
    expect(code).toBe(64);
    expect(err).toMatch(/--ap-power-dbm: expected .* -10 to 36, got "18W"/);
  });
});
