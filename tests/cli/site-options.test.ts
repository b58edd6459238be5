/** Antennas, heights, walls, floors and path models on the command line. */
import { describe, expect, test } from "vitest";
import { scratch } from "./scratch.js";
import { schemaFaults } from "./schemas.js";
import { FULL, inProcess } from "./stillband.js";

const { file, folder } = scratch();

interface Row {
  readonly distanceM: number;
  readonly floorDistanceM: number | null;
  readonly pathLossDb: number;
  readonly receivedDbm: number | null;
  readonly workingMarginDb: number | null;
  readonly txGainDbi: number | null;
  readonly rxGainDbi: number | null;
  readonly gainReason: string | null;
  readonly polarisationLossDb: number;
  readonly wallLossDb: number;
  readonly floorLossDb: number;
  readonly heldRatio: number;
  readonly verdict: string;
  readonly caveats: readonly string[];
}

interface LinkJson {
  readonly receiver: {
    readonly distanceM: number;
    readonly floorDistanceM: number | null;
    readonly pathModel: string;
  };
  readonly link: {
    readonly frequencyMhz: number;
    readonly rows: readonly Row[];
    readonly reference: Row;
    readonly reachM: number | null;
    readonly reachFloorM: number | null;
    readonly shadowingSigmaDb: number | null;
    readonly walls: readonly { readonly wall: string; readonly lossDb: number; readonly edition: string }[];
    readonly warnings: readonly {
      readonly code: string;
      readonly floorDistanceM?: number;
      readonly moveHelpDb?: number | null;
      readonly moveReason?: string | null;
    }[];
  };
  readonly practice: readonly { readonly code: string; readonly state: string }[];
}

async function link(words: string): Promise<LinkJson> {
  const { code, out, err } = await inProcess(["link", "--json", ...words.split(" ").filter(Boolean)]);
  expect([code, err], words).toEqual([0, ""]);
  const told = JSON.parse(out) as LinkJson;
  expect(schemaFaults("link", told), words).toEqual([]);
  return told;
}

async function text(args: readonly string[]): Promise<string> {
  const { code, out } = await inProcess(args);
  expect(code).toBe(0);
  for (const line of out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
  return out;
}
const flowing = (lines: string): string => lines.replace(/\s+/g, " ");

/** ITU-R P.1238, N = 22, one floor. */
const pathDb = (distanceM: number, frequencyMhz: number): number =>
  20 * Math.log10(frequencyMhz) + 22 * Math.log10(distanceM) - 28;

describe("heights and antennas", () => {
  test("rows are along the floor, the path and the patterns in three dimensions", async () => {
    const { link: told, receiver } = await link(
      "--tx-antenna dipole --rx-antenna dipole --tx-height 2m --rx-height 8m --distances 8m,20m",
    );
    const row = told.rows[0]!; // 8 m along and 6 m up: 10 m, 53.13° off the rods
    const field = Math.cos((Math.PI / 2) * 0.6) / 0.8; // the half-wave dipole (Balanis, section 4.6; from memory)
    const gainDbi = 10 * Math.log10(1.6409224) + 20 * Math.log10(field);
    expect([row.floorDistanceM, row.distanceM]).toEqual([8, 10]);
    expect(row.txGainDbi).toBeCloseTo(gainDbi, 5);
    expect(row.rxGainDbi).toBeCloseTo(gainDbi, 5);
    expect(row.receivedDbm).toBeCloseTo(18 + 2 * gainDbi - pathDb(10, told.frequencyMhz) - 10, 4);
    expect([receiver.floorDistanceM, receiver.distanceM]).toEqual([20, Math.hypot(20, 6)]);
    expect(told.reachFloorM!).toBeLessThan(told.reachM!);
  });
  test("in ft too, and 0 is a height", async () => {
    const { link: told } = await link("--units ft --tx-height 0 --rx-height 10 --distances 100");
    expect(told.rows[0]!.distanceM).toBeCloseTo(Math.hypot(100, 10) * 0.3048, 9); // the international foot
  });
  test("an antenna in a null is warned of, in JSON and in the report, with what 1 m aside brings", async () => {
    const words =
      "--tx-antenna collinear:8 --rx-antenna dipole --tx-height 2m --rx-height 8m --distances 1m,40m";
    const { link: told } = await link(words);
    const [warning] = told.warnings;
    expect(warning).toMatchObject({ code: "null-of-transmitter", floorDistanceM: 1, moveReason: null });
    expect(warning!.moveHelpDb).toBeGreaterThan(5);
    const helpDb = Math.floor(warning!.moveHelpDb!);
    expect(flowing(await text(["link", ...words.split(" ")]))).toMatch(
      new RegExp(
        `At 1 m \\(3 ft\\) along the floor the receiver sits in the null of the transmitter's antenna.*helps by ${helpDb} dB`,
      ),
    );
  });
  test("a null that fails nearer than the reach: no reach without the distances at which it fails", async () => {
    const words = "--tx-antenna collinear:9 --tx-height 3m --rx-height 12m --wall 1dB --distances 1m,2m,8m";
    const { link: told } = await link(words);
    expect(told.rows.map(({ verdict }) => verdict === "fails")).toEqual([true, true, false]);
    const out = await text(["link", ...words.split(" ")]);
    expect(out).toMatch(/^Reach .*; but fails at 1 m to 2 m$/m);
    expect(flowing(out)).toMatch(/Reach in sight: [^.]*, but fails at 1 m to 2 m\./);
    expect(out).toMatch(/^Link .*an antenna's null limits it$/m); // the reference too: 24° off a 13° beam
    expect(await text(["link", "--distances", "8m,400m"])).not.toContain("but fails");
  });
  test("a slab's figure says what it is an average of, and for which polarisation", async () => {
    const told = /slabs averaged over 2400–2483\.5 MHz, the field along the wall \(TE\)/;
    expect(flowing(await text(["link", "--wall", "glass:6mm@60"]))).toMatch(told);
    expect(flowing(await text(["link", "--wall", "6dB"]))).not.toMatch(told);
  });
  test("a wall in the path of a receiver taken as in sight: said, but not where the law is Rayleigh", async () => {
    const told = /A wall or floor lies between/;
    expect(flowing(await text(["link", "--wall", "6dB"]))).toMatch(told);
    expect(flowing(await text(["link", "--floors", "1"]))).toMatch(told);
    expect(flowing(await text(["link"]))).not.toMatch(told);
    expect(flowing(await text(["link", "--wall", "6dB", "--fade", "rayleigh"]))).not.toMatch(told);
  });
  test("a true null: no number, a reason, and the verdict fails, in link and channel", async () => {
    const { link: told } = await link("--tx-antenna dipole,sideways");
    expect(told.rows.length).toBeGreaterThan(0);
    for (const row of told.rows) {
      expect(row).toMatchObject({
        txGainDbi: null,
        receivedDbm: null,
        workingMarginDb: null,
        verdict: "fails",
      });
      expect(row.gainReason).toMatch(/null of the transmitter's antenna/);
    }
    const { code, out } = await inProcess(["channel", FULL, "--tx-antenna", "dipole,sideways", "--json"]);
    expect(code).toBe(0);
    expect(schemaFaults("channel", JSON.parse(out))).toEqual([]);
    expect(out).not.toMatch(/Infinity|NaN/);
    const report = await text(["channel", FULL, "--tx-antenna", "dipole,sideways"]);
    expect(report).toMatch(/FAILS at 20 m \(66 ft\): no signal in an antenna's null/);
    expect(report).not.toMatch(/Infinity|NaN/);
  });
  test("the peak is what the region judges: a stronger antenna leaves less power", async () => {
    const powers = await Promise.all(
      ["isotropic", "collinear:8", "panel:12:50:30"].map(async (antenna) => {
        const { out } = await inProcess(["link", "--region", "EU", "--tx-antenna", antenna, "--json"]);
        const { link: told } = JSON.parse(out) as {
          link: { budget: { txPowerDbm: number; eirpDbm: number } };
        };
        return told.budget;
      }),
    );
    // EN 300 328: 10 dBm/MHz EIRP for a 1 MHz fixed channel.
    expect(powers.map(({ txPowerDbm }) => txPowerDbm)).toEqual([10, 2, -2]);
    for (const { eirpDbm } of powers) expect(eirpDbm).toBeCloseTo(10, 9);
  });
  test("without either the report says that both ends are level and gain all round", async () => {
    const out = flowing(await text(["link"]));
    expect(out).toMatch(/level with the transmitter/);
    expect(out).toMatch(/the same in every direction/);
  });
});

describe("walls and floors", () => {
  test("each wall by its own loss, edition named, in every row", async () => {
    const { link: told } = await link("--wall concrete:200mm --wall plasterboard:12.5mm --wall 6dB");
    // ITU-R P.2040-3 at 2.45 GHz: 14.80 dB and 1.09 dB; the planning value is the band's mean.
    const [concrete, plasterboard, given] = told.walls;
    expect(Math.abs(concrete!.lossDb - 14.8)).toBeLessThan(0.15);
    expect(Math.abs(plasterboard!.lossDb - 1.09)).toBeLessThan(0.05);
    expect(given).toMatchObject({ wall: "6dB", lossDb: 6 });
    expect(concrete!.edition).toBe("ITU-R P.2040-3");
    const sumDb = told.walls.reduce((sum, { lossDb }) => sum + lossDb, 0);
    for (const row of told.rows) expect(row.wallLossDb).toBeCloseTo(sumDb, 9);
  });
  test("layers, other units and a slanting path", async () => {
    const words = [
      "--wall plasterboard:12mm+air:100mm+plasterboard:12mm",
      "--wall brick:11cm --wall brick:0.11m --wall brick:110mm@60",
      "--wall wood:2in --wall wood:50.8mm",
    ].join(" ");
    const { link: told } = await link(words);
    const losses = told.walls.map(({ lossDb }) => lossDb);
    expect(losses[1]).toBeCloseTo(losses[2]!, 12);
    expect(Math.abs(losses[3]! - losses[1]!)).toBeGreaterThan(0.1);
    expect(losses[4]).toBeCloseTo(losses[5]!, 12);
  });
  // ITU-R P.1238 as ns-3 states it: commercial 6 + 3·(n − 1), office 15 + 4·(n − 1), N = 22 and 30.
  test.each([
    ["--floors 1", 6, 22],
    ["--floors 3", 12, 22],
    ["--floors 2 --building office", 19, 30],
    ["--floors 2 --building office --path-model indoor:25", 19, 25],
    ["--floors 2 --building residential", 8, 28],
    ["--building office", 0, 30],
    ["--floors 0", 0, 22],
  ])("%s: %d dB of floors with N = %d", async (words, floorDb, n) => {
    const { link: told } = await link(words);
    const { floorLossDb, pathLossDb } = told.reference;
    expect(floorLossDb).toBe(floorDb);
    const expectedDb = 20 * Math.log10(told.frequencyMhz) + n * Math.log10(20) - 28 + floorDb;
    expect(pathLossDb).toBeCloseTo(expectedDb, 9);
  });
  test("what the options decide of good practice is told in JSON, link and channel", async () => {
    const words = ["--tx-height", "2m", "--rx-height", "8m", "--wall", "3dB"];
    const { practice } = await link(words.join(" "));
    const broken = practice.filter(({ state }) => state === "broken").map(({ code }) => code);
    expect(broken).toEqual(["tx-in-room", "tx-above-heads", "tx-in-sight"]);
    const section = (out: string): string[] => {
      const lines = out.split("\n");
      const from = lines.findIndex((line) => line.startsWith("Antenna practice"));
      return from < 0 ? [] : lines.slice(from, lines.indexOf("", from));
    };
    expect(section(await text(["link", ...words]))).toHaveLength(12);
    expect(section(await text(["channel", FULL, ...words]))).toHaveLength(4);
    expect(section(await text(["channel", FULL]))).toEqual([]);
  });
});

describe("path models", () => {
  const fitted = {
    schema: "stillband/path-model@1",
    kind: "log-distance",
    exponent: 2.4,
    referenceLossDb: 41.2,
    sigmaDb: 3.7,
    distanceRangeM: [3, 35],
  };
  test("from a file, JSON or YAML, with its own range and sigma", async () => {
    const yaml =
      'schema: stillband/path-model@1\nkind: log-distance\nexponent: 2.4\nreference_loss_db: 41.2\nsigma_db: 3.7\ndistance_range_m: [3, 35]\nnote: "walk test"\n';
    for (const path of [file("fit.json", JSON.stringify(fitted)), file("fit.yaml", yaml)]) {
      const { link: told } = await link(`--path-model ${path} --distances 2m,10m,40m`);
      expect(told.rows.map(({ pathLossDb }) => pathLossDb)[1]).toBeCloseTo(65.2, 9); // 41.2 + 24·log10(10)
      expect(told.rows.map(({ caveats }) => caveats.includes("outside-model-range"))).toEqual([
        true,
        false,
        true,
      ]);
      expect(told.shadowingSigmaDb).toBe(3.7);
      const out = await text(["link", "--path-model", path, "--distances", "2m"]);
      expect(flowing(out)).toMatch(/shadowing sigma 3\.7 dB of the path model is not in it/);
      expect(out).toMatch(/^# outside the distances/m);
    }
  });
  test("a mistake in a file is told by key, as data too", async () => {
    const path = file("bad.json", JSON.stringify({ ...fitted, exponent: "steep", sigmaDb: -1 }));
    const { code, out, err } = await inProcess(["link", "--json", "--path-model", path]);
    expect(code).toBe(65);
    expect(err).toMatch(/exponent.*from 0 to 10[\s\S]*sigmaDb.*from 0 to 30/);
    const { issues } = JSON.parse(out) as { issues: { column: string }[] };
    expect(issues.map(({ column }) => column)).toEqual(["exponent", "sigmaDb"]);
  });
  test("a file that isn't there is 66, one that is no YAML 65", async () => {
    expect((await inProcess(["link", "--path-model", `${folder}/none.json`])).code).toBe(66);
    expect((await inProcess(["link", "--path-model", file("x.yaml", "a: [")])).code).toBe(65);
  });
  // ITU-R P.1238-11 Table 2, office in sight: α 1.46, β 34.62, γ 2.03, σ 3.76, 2 to 27 m.
  test("indoor-abg by place and sight; outside its range it says so", async () => {
    const { link: told } = await link("--path-model indoor-abg:office:los --distances 10m,40m");
    const expectedDb = 14.6 + 34.62 + 20.3 * Math.log10(told.frequencyMhz / 1000);
    expect(told.rows[0]!.pathLossDb).toBeCloseTo(expectedDb, 9);
    expect(told.rows.map(({ caveats }) => caveats.includes("outside-model-range"))).toEqual([false, true]);
    expect(told.shadowingSigmaDb).toBe(3.76);
  });
  test("log-distance takes a sigma; too near is marked", async () => {
    const { link: told } = await link("--path-model log-distance:2.2:40.2:5 --distances 0.2m");
    expect(told.shadowingSigmaDb).toBe(5);
    expect(told.rows[0]!.caveats).toContain("near-field");
    expect(await text(["link", "--distances", "0.2m"])).toMatch(/^~ within three wavelengths/m);
  });
});

describe("usage", () => {
  test.each([
    ["--tx-height 3m", /--rx-height too/, /--tx-height 3m --rx-height/],
    ["--rx-height 3m", /--tx-height too/, /--rx-height 3m/],
    ["--tx-height 300m --rx-height 3m", /up to 200 m/, /--tx-height 3m/],
    ["--tx-antenna colinear:8", /collinear:GAIN/, /--tx-antenna collinear:8/],
    ["--tx-antenna collinear:1", /from 1\.77 to 20/, /--tx-antenna/],
    ["--rx-antenna panel:14:70:60", /at most about 9\.8 dBi/, /--rx-antenna/],
    ["--tx-antenna panel:8", /panel:GAIN:AZIMUTH:ELEVATION/, /panel:8:70:60/],
    ["--tx-antenna dipole,sidways", /upright, sideways, hanging/, /sideways/],
    ["--tx-antenna dipole,tilt=91", /tilt=DEG/, /--tx-antenna/],
    ["--tx-antenna dipole,upright,hanging", /one mounting/, /--tx-antenna/],
    ["--rx-antenna dipole,tilt=5,tilt=6", /one tilt/, /--rx-antenna/],
    ["--tx-antenna dipole --set txGainDbi=3", /no --set txGainDbi/, /--tx-antenna dipole/],
    ["--wall concret:200mm", /did you mean concrete\?/, /--wall concrete:200mm/],
    ["--wall concrete:200", /with its unit/, /--wall concrete:200mm/],
    ["--wall concrete", /MATERIAL:THICKNESS/, /--wall concrete:200mm/],
    ["--wall brick:1m@90", /below 90/, /@45/],
    ["--wall -3dB", /0 to 200 dB/, /--wall 6dB/],
    ["--floors 1.5", /0 to 50/, /--floors 1/],
    ["--building ofice", /residential, office, commercial/, /--building office/],
    ["--building office --path-model free-space", /--floors beside it/, /--building office --floors 1/],
    ["--path-model indoor-abg:offce:LoS", /office, corridor, industrial/, /indoor-abg:office:LoS/],
    ["--path-model log-distance:2:40:99", /log-distance:EXPONENT/, /--path-model log-distance/],
  ])("%s: exit 64, with what would do", async (words, told, next) => {
    const { code, out, err } = await inProcess(["link", ...words.split(" ")]);
    expect([code, out]).toEqual([64, ""]);
    expect(err).toMatch(told);
    expect(err.split("\n").find((line) => line.startsWith("Try: "))).toMatch(next);
  });
});
