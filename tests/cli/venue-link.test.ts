/** `link VENUE`: every receiver's budget, as a process and by independent arithmetic. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { tooWide } from "./columns.js";
import { schemaFaults } from "./schemas.js";
import { firstBlock, stillband } from "./stillband.js";

const VENUE = "fixtures/venues/ropewalk/venue.yaml";
const folder = mkdtempSync(join(tmpdir(), "stillband-venue-link-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface LinkVenueJson {
  readonly systems: readonly {
    readonly system: string;
    readonly channel: number | null;
    readonly isCandidate: boolean;
    readonly reason: string | null;
    readonly expectedInHoleCount: number;
    readonly allHoldProbability: number;
    readonly job: { readonly expectedInHoleCount: number; readonly allHoldProbability: number } | null;
    readonly practice: readonly {
      readonly code: string;
      readonly state: string;
      readonly figureM: number | null;
    }[];
    readonly receivers: readonly {
      readonly receiver: string;
      readonly workingMarginDb: number | null;
      readonly heldRatio: number;
      readonly budget: Readonly<Record<string, number>>;
      readonly channels: readonly { readonly channel: number; readonly workingMarginDb: number | null }[];
      readonly mends: readonly {
        readonly code: string;
        readonly helpDb: number | null;
        readonly workingMarginDb: number;
        readonly channel: number;
      }[];
    }[];
  }[];
}

async function linkJson(args: readonly string[]): Promise<LinkVenueJson> {
  const { code, out, err } = await stillband(["link", ...args, "--json"]);
  expect([code, err]).toEqual([0, ""]);
  const value = JSON.parse(out) as LinkVenueJson;
  expect(schemaFaults("link", value)).toEqual([]);
  return value;
}

/** A venue of one bare room, written where the tests may. */
function venueFile(name: string, text: string): string {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const SHED = `name: Net shed
units: m
rooms:
  - { name: shed, outline: [[0, 0], [40, 0], [40, 20], [0, 20]], height: 12 }
systems:
  - name: shed
    rooms: [shed]
    profile: raster-13
    channel: 6
    transmitter: { name: gantry, at: [5, 10], height: 6, antenna: { kind: isotropic } }
luminaires:
  - { name: N1, room: shed, x: 15, y: 10, trim_height: 6, ceiling_height: 12 }
  - { name: N2, room: shed, x: 35, y: 10, trim_height: 6, ceiling_height: 12 }
`;

describe("against arithmetic by hand", () => {
  // ITU-R P.1238, commercial, N = 22 at one floor: L = 20 log f + 22 log d − 28 (f in MHz).
  const pathLossDb = (distanceM: number): number => 20 * Math.log10(2437) + 22 * Math.log10(distanceM) - 28;
  // Raster-13: 18 dBm, isotropic transmitter 0 dBi, 2 dBi at the receiver, canopy 10 dB.
  const receivedDbm = (distanceM: number): number => 18 + 0 - pathLossDb(distanceM) - 10 + 2;

  test("an empty room without scans: the level, and sensitivity as the limit, 20 dB over noise apart", async () => {
    const { systems } = await linkJson([venueFile("shed.yaml", SHED)]);
    const byName = new Map(systems[0]!.receivers.map((one) => [one.receiver, one]));
    for (const [name, distanceM] of [
      ["N1", 10],
      ["N2", 30],
    ] as const) {
      const { budget, workingMarginDb } = byName.get(name)!;
      expect(budget["receivedDbm"]).toBeCloseTo(receivedDbm(distanceM), 9);
      expect(budget["sensitivityMarginDb"]).toBeCloseTo(receivedDbm(distanceM) + 90, 9);
      // kTB: −174 + 60 dB of 1 MHz + noise figure 10 = −104 dBm; C/I 14.
      expect(budget["interferenceMarginDb"]).toBeCloseTo(receivedDbm(distanceM) + 104 - 14, 9);
      expect(workingMarginDb).toBeCloseTo(receivedDbm(distanceM) + 90 - budget["fadeAllowanceDb"]!, 9);
    }
    expect(systems[0]!.receivers.map(({ receiver }) => receiver)).toEqual(["N2", "N1"]);
    expect(systems[0]!.channel).toBe(6);
  });
  test("an antenna brought out of the canopy gives its 10 dB back", async () => {
    const { systems } = await linkJson([venueFile("shed.yaml", SHED)]);
    const out = systems[0]!.receivers[0]!.mends.find(({ code }) => code === "antenna-out")!;
    expect(out.helpDb).toBeCloseTo(10, 9);
  });
  test("all receivers together: the product of what each holds, and the sum of what each doesn't", async () => {
    const { systems } = await linkJson([VENUE]);
    for (const { receivers, expectedInHoleCount, allHoldProbability, job } of systems) {
      const held = receivers.map(({ heldRatio }) => heldRatio);
      expect(allHoldProbability).toBeCloseTo(
        held.reduce((product, one) => product * one, 1),
        12,
      );
      expect(expectedInHoleCount).toBeCloseTo(
        held.reduce((sum, one) => sum + 1 - one, 0),
        12,
      );
      expect(job!.allHoldProbability).toBeCloseTo(0.99 ** receivers.length, 12);
      expect(job!.expectedInHoleCount).toBeCloseTo(0.01 * receivers.length, 12);
    }
  });
});

describe("the demo venue", () => {
  test("weakest first; the channel is that of the greatest smallest margin; a mend is what it says", async () => {
    const { systems } = await linkJson([VENUE]);
    expect(systems.map(({ system }) => system)).toEqual(["hall", "foyer", "studio"]);
    for (const { receivers, channel } of systems) {
      const margins = receivers.map(({ workingMarginDb }) => workingMarginDb!);
      expect(margins).toEqual([...margins].sort((a, b) => a - b));
      const least = (number: number): number =>
        Math.min(
          ...receivers.map(
            ({ channels }) => channels.find((one) => one.channel === number)!.workingMarginDb!,
          ),
        );
      const all = receivers[0]!.channels.map((one) => least(one.channel));
      expect(least(channel!)).toBeCloseTo(Math.max(...all), 9);
      for (const { mends, workingMarginDb, channels } of receivers)
        for (const mend of mends) {
          expect(mend.workingMarginDb - workingMarginDb!).toBeCloseTo(mend.helpDb!, 9);
          const there = channels.find((one) => one.channel === mend.channel)!.workingMarginDb!;
          if (mend.code === "other-channel") expect(mend.workingMarginDb).toBeCloseTo(there, 9);
        }
    }
  });
  test("an empty room is never worse than a full one, on any channel", async () => {
    const [empty, full] = await Promise.all([
      linkJson([VENUE, "--crowd", "empty"]),
      linkJson([VENUE, "--crowd", "full"]),
    ]);
    for (const [index, system] of full.systems.entries())
      for (const { receiver, channels } of system.receivers) {
        const before = empty.systems[index]!.receivers.find((one) => one.receiver === receiver)!;
        for (const { channel, workingMarginDb } of channels) {
          const emptyDb = before.channels.find((one) => one.channel === channel)!.workingMarginDb!;
          expect(emptyDb, `${receiver}, radio ch ${channel}`).toBeGreaterThanOrEqual(workingMarginDb! - 0.3);
        }
      }
  });
  test("the booth stands 2.1 m from an access point: (2.5, 13, 5.6) to (2, 15, 5.2)", async () => {
    const { systems } = await linkJson([VENUE, "--system", "hall"]);
    const near = systems[0]!.practice.find(({ code }) => code === "tx-from-access-point")!;
    expect(near.state).toBe("broken");
    expect(near.figureM).toBeCloseTo(Math.hypot(0.5, 2, 0.4), 9);
  });
  test("an option of one system leaves the others out, a channel is kept", async () => {
    const { systems } = await linkJson([VENUE, "--system", "studio", "--channel", "9"]);
    expect(systems.map(({ system, channel }) => [system, channel])).toEqual([["studio", 9]]);
  });
  test("people who bring nothing put nothing on the air", async () => {
    const { systems } = await linkJson([VENUE, "--system", "studio", "--carried-share", "0"]);
    const before = await linkJson([VENUE, "--system", "studio"]);
    const weakest = (value: LinkVenueJson["systems"]): number => value[0]!.receivers[0]!.workingMarginDb!;
    expect(weakest(systems)).toBeGreaterThan(weakest(before.systems) + 3);
  });
});

describe("text", () => {
  test("opens with the answer in whole numbers, no line wider than 80 columns, in m and ft", async () => {
    for (const units of ["m", "ft"]) {
      const { code, out } = await stillband(["link", VENUE, "--units", units, "--region", "EU"]);
      expect(code).toBe(0);
      expect(tooWide(out, 80)).toEqual([]);
      const block = firstBlock(out);
      expect(block.length).toBeLessThanOrEqual(8);
      expect(block.filter((line) => /\d\.\d|…$/.test(line))).toEqual([]);
      expect(block.join("\n")).toMatch(/FAILS on radio ch \d+: \d+ of \d+ short, .* by \d+ dB; interference/);
      expect(out).toMatch(/generic figures/);
      expect(out).toMatch(/No emergency or exit lighting may depend on the radio link/);
      expect(out).toMatch(units === "m" ? /\d\.\d m {2}/ : /\d\.\d ft {2}/);
    }
  });
  test("one receiver's budget adds up line by line", async () => {
    const { out } = await stillband(["link", VENUE, "--receiver", "H9"]);
    const [budget = ""] = out.split("\n\n").filter((part) => part.startsWith("H9 of hall"));
    const figure = (line: string): number =>
      Number(new RegExp(`^${line}.*? (-?[\\d.]+) dB`, "m").exec(budget)![1]);
    const gains = [
      "transmit power",
      "feeder",
      "transmitter antenna",
      "path,",
      "enclosure",
      "audience",
      "polarisation",
      "receiver antenna",
    ];
    const sum = gains.reduce((total, line) => total + figure(line), 0);
    expect(sum).toBeCloseTo(figure("received"), 0);
    expect(figure("received") - figure("interference \\+ noise") - figure("required C/I")).toBeCloseTo(
      Number(/required C\/I.*leaves (-?[\d.]+) dB/.exec(budget)![1]),
      0,
    );
  });
  test("the null straight under a rod is told as one, and JSON has no number for it", async () => {
    const path = venueFile(
      "null.yaml",
      SHED.replace("kind: isotropic", "kind: dipole").replace(
        "x: 15, y: 10, trim_height: 6",
        "x: 5, y: 10, trim_height: 9",
      ),
    );
    const { out } = await stillband(["link", path]);
    expect(firstBlock(out).join(" ")).toMatch(/FAILS.*no signal at N1, in an antenna's null/);
    const { systems } = await linkJson([path]);
    expect(systems[0]!.receivers[0]!.workingMarginDb).toBeNull();
  });
  test("a system that is not placed is judged at its first candidate, and says so", async () => {
    const path = venueFile(
      "candidate.yaml",
      SHED.replace(
        /transmitter: (.*)/,
        "candidates: [{ name: gantry, at: [5, 10], height: 6 }, { name: gable, at: [20, 1], height: 6 }]",
      ),
    );
    const { out } = await stillband(["link", path]);
    expect(out.replace(/\s+/g, " ")).toMatch(
      /Not placed yet: this is its first candidate; stillband place compares them/,
    );
    const { systems } = await linkJson([path]);
    expect(systems[0]!.isCandidate).toBe(true);
  });
  test("one with neither says where to go on", async () => {
    const path = venueFile("nowhere.yaml", SHED.replace(/ {4}transmitter: .*\n/, ""));
    const { code, out } = await stillband(["link", path]);
    expect(code).toBe(0);
    expect(out).toMatch(/stillband place/);
    const { systems } = await linkJson([path]);
    expect(systems[0]!.reason).toMatch(/not placed/);
  });
});

describe("what can't be", () => {
  test.each([
    [["--system", "hal"], /--system: expected a system of the venue file \(hall, foyer, studio\), got "hal"/],
    [["--receiver", "H99"], /--receiver: expected a receiver of the venue file \(H1, .*\), got "H99"/],
    [
      ["--channel", "14"],
      /--channel: expected a radio channel that every system judged may use \(1, 2, .*13\)/,
    ],
    [["--crowd", "half"], /--crowd: expected empty, part or full/],
    [["--profile", "raster-16"], /--profile: expected no such option beside a venue file/],
    [["--tx-height", "3m"], /--tx-height: expected no such option/],
    [["--on-air-share", "2"], /--on-air-share/],
    [["fixtures/scans/ropewalk-full.csv"], /expected a venue file alone; it names its scans itself/],
  ])("%s is a usage error that names what can", async (args, words) => {
    const { code, err, out } = await stillband(["link", VENUE, ...args]);
    expect([code, out]).toEqual([64, ""]);
    expect(err).toMatch(words);
  });
  test("crowd figures beside scans have no meaning", async () => {
    const { code, err } = await stillband(["link", "--handset-dbm", "10"]);
    expect(code).toBe(64);
    expect(err).toMatch(/--handset-dbm: expected a venue file/);
  });
  test("a venue file that isn't there, or isn't sound", async () => {
    expect((await stillband(["link", join(folder, "none.yaml")])).code).toBe(66);
    const shared = SHED.replace("x: 15, y: 10", "x: 5, y: 10");
    const { code, err } = await stillband(["link", venueFile("shared.yaml", shared)]);
    expect(code).toBe(65);
    expect(err).toMatch(/a place apart from the receiver N1/);
  });
});
