import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatIssue } from "../../src/issues/index.js";
import { builtInProfiles, findProfile, profileJson, readProfile } from "../../src/radio/index.js";
import type { RadioProfile } from "../../src/radio/index.js";

const read = (data: unknown) => readProfile(data, "mine.yaml");
const columnsOf = (data: unknown) => read(data).issues.map(({ column }) => column);
function profileOf(data: unknown): RadioProfile {
  const { profile, issues } = read(data);
  if (profile === null) throw new Error(issues.map(formatIssue).join("\n"));
  return profile;
}

describe("round trip", () => {
  test.each(builtInProfiles)("$name prints whole and reads back equal", (profile) => {
    const { profile: again, issues } = readProfile(JSON.parse(profileJson(profile)), "again.json");
    expect(issues).toEqual([]);
    expect(again).toEqual(profile);
  });
  test("a user's own profile too, twice", () => {
    const mine = profileOf({
      based_on: "hop-79-avoid",
      name: "loft radio",
      tx_power_dbm: 12.5,
      relink_s: 40,
      selectivity: {
        steps: [
          [0.6, 0],
          [40, -45],
        ],
      },
      channels: { channel: 3, centre_mhz: 2410, spacing_mhz: 2, channel_count: 30 },
    });
    expect(profileOf(JSON.parse(profileJson(mine)))).toEqual(mine);
  });
});

describe("overriding single figures", () => {
  test("a number in quotes is told for what it is: it reads like the right one", () => {
    const figures = { tx_power_dbm: "17", transmissions_per_frame_count: "2", noise_figure_db: "low" };
    const told = read({ based_on: "raster-13", ...figures }).issues.map(({ expected }) => expected);
    expect(told.map((words) => words.endsWith(" without quotes"))).toEqual([false, true, true]); // noise figure, power, transmissions
  });
  test("a bare value is yours, everything else stays", () => {
    const base = findProfile("raster-13");
    const mine = profileOf({ based_on: "raster-13", sensitivity_dbm: -85, receiversFollow: "no" });
    expect(mine.sensitivityDbm).toMatchObject({ value: -85, status: "yours" });
    expect(mine.receiversFollow).toMatchObject({ value: "no", status: "yours" });
    expect(mine.generic).toBe(false);
    const { name, title, generic, sensitivityDbm, receiversFollow, ...rest } = mine;
    expect([name, title, generic, sensitivityDbm.value, receiversFollow.value].length).toBe(5);
    expect(base).toMatchObject(rest);
  });
  test("a figure may say its status and source; nothing changed stays generic", () => {
    const figure = { value: -92, status: "standard", source: "a test report" };
    const mine = profileOf({ basedOn: "raster-13", sensitivityDbm: figure });
    expect(mine.sensitivityDbm).toEqual(figure);
    expect(profileOf({ basedOn: "raster-13" }).generic).toBe(true);
    expect(profileOf({ basedOn: "raster-13", txGainDbi: { value: 0 } }).txGainDbi.status).toBe("yours");
  });
  test("an enclosure brings its loss, unless one is given", () => {
    const closed = profileOf({ based_on: "raster-13", enclosure: "closed-metal" });
    expect(closed.enclosureLossDb).toMatchObject({ value: 20, status: "assumed" });
    const measured = profileOf({ based_on: "raster-13", enclosure: "closed-metal", enclosure_loss_db: 27 });
    expect(measured.enclosureLossDb).toMatchObject({ value: 27, status: "yours" });
  });
  test("channels as a list or as a raster; a hop plan dropped by null", () => {
    const listed = profileOf({
      based_on: "hop-79",
      hopping: null,
      channels: [
        { channel: 4, centreMhz: 2420 },
        { channel: 2, centre_mhz: 2410.5 },
      ],
    });
    expect(listed.channels).toEqual([
      { channel: 4, centreMhz: 2420 },
      { channel: 2, centreMhz: 2410.5 },
    ]);
    expect(listed.hopping).toBeNull();
    expect(listed.channelsOrigin.status).toBe("yours");
    const hopping = profileOf({
      based_on: "raster-13",
      hopping: { avoids: true, least_hop_count: 20 },
    }).hopping;
    expect(hopping).toMatchObject({ avoids: true, leastHopCount: { value: 20, status: "yours" } });
  });
  test("figures that don't go together are warned about, not changed", () => {
    const { profile, issues } = read({ based_on: "raster-13", sensitivity_dbm: -100 });
    expect(profile?.sensitivityDbm.value).toBe(-100);
    expect(issues).toMatchObject([{ code: "contradiction", severity: "warning", column: "sensitivityDbm" }]);
    expect(columnsOf({ based_on: "raster-13", bandwidth_mhz: 2 })).toEqual([
      "sensitivityDbm",
      "bandwidthMhz",
    ]);
  });
});

describe("frames that last longer than the time to the next", () => {
  const airtime = (figures: Record<string, number>): ReturnType<typeof read>["issues"] =>
    read({ based_on: "raster-13", ...figures }).issues.filter(({ column }) => column === "packetMs");
  // 44 frames a second leave 1000/44 = 22.73 ms; 5 × 4.5 = 22.5 fit, 6 × 4.5 = 27 do not.
  test("a warning names the figures", () => {
    expect(airtime({ transmissions_per_frame_count: 5 })).toEqual([]);
    const [issue] = airtime({ transmissions_per_frame_count: 6 });
    expect(issue).toMatchObject({ code: "contradiction", severity: "warning" });
    for (const figure of ["4.5 ms", "6 sent", "27 ms", "44 frames", "22.73 ms"])
      expect(issue!.expected).toContain(figure);
  });
  test("every universe of the transmitter takes its time; an exact fit is one", () => {
    expect(airtime({ universes_per_transmitter_count: 6 })[0]!.expected).toContain("6 universes");
    expect(airtime({ packet_ms: 10, transmissions_per_frame_count: 2, frame_rate_hz: 50 })).toEqual([]);
    expect(airtime({ packet_ms: 10.01, transmissions_per_frame_count: 2, frame_rate_hz: 50 })).toHaveLength(
      1,
    );
  });
});

describe("mistakes are data, all at once, with the path", () => {
  test("many in one file", () => {
    const { profile, issues } = read({
      based_on: "raster-13",
      sensitivty_dbm: -85,
      tx_power_dbm: "18 dBm",
      enclosure: "slotted-metall",
      packet_ms: NaN,
      frameRateHz: { value: 44, status: "measured" },
      selectivity: {
        points: [
          [1, 0],
          [0, 0],
        ],
      },
      hopping: { avoids: "yes", leastHopCount: 2.5 },
      channels: [{ channel: 1, centreMhz: 5180 }, 7],
    });
    expect(profile).toBeNull();
    expect(new Set(issues.map(({ column }) => column))).toEqual(
      new Set([
        "sensitivty_dbm",
        "txPowerDbm",
        "enclosure",
        "packetMs",
        "frameRateHz.status",
        "selectivity.points",
        "hopping.avoids",
        "hopping.leastHopCount",
        "channels[0].centreMhz",
        "channels[1]",
      ]),
    );
    expect(issues).toHaveLength(10);
    for (const issue of issues) expect(issue).toMatchObject({ severity: "error", source: "mine.yaml" });
    const words = issues.map(formatIssue).join("\n");
    expect(words).toContain("did you mean sensitivityDbm?");
    expect(words).toContain("did you mean slotted-metal?");
    expect(words).toContain('a power in dBm from -60 to 40, got "18 dBm"');
  });
  test("a full profile names every missing key", () => {
    const { profile, issues } = read({ name: "bare" });
    expect(profile).toBeNull();
    expect(issues.length).toBe(19); // 18 figures and the channels
    for (const issue of issues) expect(issue).toMatchObject({ code: "missing-cell", severity: "error" });
    expect(columnsOf({})).toContain("name");
  });
  test("an unknown base", () => {
    const { profile, issues } = read({ based_on: "raster-31" });
    expect(profile).toBeNull();
    expect(issues.map(formatIssue)).toHaveLength(1);
    expect(formatIssue(issues[0]!)).toContain("did you mean raster-13?");
  });
  test.each([[null], [7], ["text"], [[1]], [undefined]])("%j is no mapping", (data) => {
    expect(read(data)).toMatchObject({ profile: null, issues: [{ code: "unreadable", severity: "error" }] });
  });
  test.each([
    ["one key twice", { tx_power_dbm: 1, txPowerDbm: 2 }, "txPowerDbm"],
    ["a shape of both forms", { selectivity: { points: [[0, 0]], steps: [[1, 0]] } }, "selectivity"],
    ["a shape without any", { emission: {} }, "emission"],
    ["a shape that is a number", { emission: 5 }, "emission"],
    ["a pair that is none", { emission: { steps: [[1, 0, 3]] } }, "emission.steps"],
    ["a cell that is no number", { emission: { steps: [["1", 0]] } }, "emission.steps"],
    [
      "steps that fall",
      {
        emission: {
          steps: [
            [2, 0],
            [1, -3],
          ],
        },
      },
      "emission.steps",
    ],
    ["no channels", { channels: [] }, "channels"],
    ["too many channels", { channels: new Array(1001).fill({ channel: 1, centreMhz: 2412 }) }, "channels"],
    [
      "a channel twice",
      { channels: new Array(2).fill({ channel: 1, centreMhz: 2412 }) },
      "channels[1].channel",
    ],
    [
      "a raster out of the band",
      { channels: { channel: 1, centreMhz: 2490, spacingMhz: 5, channelCount: 4 } },
      "channels",
    ],
    [
      "a raster without a count",
      { channels: { channel: 1, centreMhz: 2412, spacingMhz: 5 } },
      "channels.channelCount",
    ],
    ["an unknown key inside a figure", { txPowerDbm: { value: 1, unit: "dBm" } }, "txPowerDbm.unit"],
    ["an empty source", { txPowerDbm: { value: 1, source: " " } }, "txPowerDbm.source"],
    ["an origin that is none", { channelsOrigin: "me" }, "channelsOrigin"],
    ["an origin with a wrong status", { channelsOrigin: { status: "mine" } }, "channelsOrigin.status"],
    ["a hop plan that is none", { hopping: true }, "hopping"],
    ["an empty name", { name: "" }, "name"],
    ["a title that is a number", { title: 5 }, "title"],
    ["half a transmission", { transmissionsPerFrameCount: 0.5 }, "transmissionsPerFrameCount"],
    ["an infinite figure", { txGainDbi: Infinity }, "txGainDbi"],
    ["null where a figure is needed", { packetMs: null }, "packetMs"],
    ["a key that every object has", { constructor: 5 }, "constructor"],
  ])("%s", (_, part, column) => {
    const { profile, issues } = read({ based_on: "raster-13", ...part });
    expect(profile).toBeNull();
    expect(issues.map((issue) => issue.column)).toContain(column);
  });
  test("whatever comes is answered: a profile or an error, never a crash", () => {
    const keys = fc.constantFrom(
      "based_on",
      "channels",
      "selectivity",
      "txPowerDbm",
      "hopping",
      "enclosure",
      "x",
    );
    const value = fc.oneof(fc.jsonValue(), fc.constantFrom("raster-13", "closed-metal", 5, null));
    fc.assert(
      fc.property(fc.dictionary(keys, value), (data) => {
        const { profile, issues } = read(data);
        expect(profile === null).toBe(issues.some(({ severity }) => severity === "error"));
      }),
    );
  });
});
