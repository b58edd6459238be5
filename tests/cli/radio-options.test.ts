/** `--profile`, `--set` and `--enclosure`: whose figures a radio has, and how it is called then. */
import { describe, expect, test } from "vitest";
import { scratch } from "./scratch.js";
import { FOYER, inProcess, stillband } from "./stillband.js";
import type { ChannelJson, IssueJson } from "./json-types.js";

const { file } = scratch();

interface ProfileJson {
  readonly name: string;
  readonly generic: boolean;
  readonly [figure: string]: unknown;
}

interface LinkJson {
  readonly issues: readonly IssueJson[];
  readonly profile: { readonly name: string; readonly generic: boolean };
  readonly link: ChannelJson["link"];
}

async function link(args: readonly string[]): Promise<LinkJson> {
  const { code, out, err } = await inProcess(["link", "--json", ...args]);
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out) as LinkJson;
}

async function printedProfile(name: string): Promise<{ schema: string; profiles: ProfileJson[] }> {
  const { out } = await inProcess(["profiles", name, "--json"]);
  return JSON.parse(out) as { schema: string; profiles: ProfileJson[] };
}

const receivedDbm = ({ link: { rows } }: LinkJson): number => rows[0]!.receivedDbm;

describe("--enclosure takes the loss of its kind", () => {
  /** Design section 6: 0, 3, 10 (the default) and 20 dB, all assumed. */
  test.each([
    ["antenna-outside", 10],
    ["plastic-or-glass", 7],
    ["slotted-metal", 0],
    ["closed-metal", -10],
  ])("%s: %i dB against the default", async (word, gainDb) => {
    const [own, given] = [await link([]), await link(["--enclosure", word])];
    expect(receivedDbm(given) - receivedDbm(own)).toBeCloseTo(gainDb, 9);
  });
  test.each([
    "enclosure_loss_db: 6",
    "enclosureLossDb: 6",
    "enclosureLossDb: 6\nenclosure: plastic-or-glass",
  ])("in place of a file's own: %j", async (line) => {
    const mine = file("mine.yaml", `name: mine\nbased_on: raster-13\n${line}\n`);
    const [own, given] = [
      await link(["--profile", mine]),
      await link(["--profile", mine, "--enclosure", "antenna-outside"]),
    ];
    expect(receivedDbm(given) - receivedDbm(own)).toBeCloseTo(6, 9);
  });
  test("closed metal is warned of, in JSON and on standard error: bring the antenna out", async () => {
    const { issues } = await link(["--enclosure", "closed-metal"]);
    expect(issues).toMatchObject([{ severity: "warning", action: "stated" }]);
    expect(issues[0]!.expected).toMatch(/closed metal.*20 dB.*bring the antenna out/);
    expect((await inProcess(["link", "--enclosure", "closed-metal"])).err).toMatch(
      /^warning: .*bring the antenna out\n$/,
    );
    expect((await inProcess(["link", "--enclosure", "slotted-metal"])).err).toBe("");
  });
});

describe("--set", () => {
  test("replaces a file's own figure, however either is spelt; of one figure twice the last holds", async () => {
    const mine = file("mine.yaml", "name: mine\nbased_on: raster-13\ntx_power_dbm: 10\n");
    const own = receivedDbm(await link(["--profile", mine]));
    for (const words of [["txPowerDbm=13"], ["tx_power_dbm=13"], ["tx_power_dbm=1", "txPowerDbm=13"]]) {
      const set = words.flatMap((word) => ["--set", word]);
      expect(receivedDbm(await link(["--profile", mine, ...set])) - own).toBeCloseTo(3, 9);
    }
  });
  test.each([
    ["tx_powr_dbm=10", /such as tx_power_dbm/, /^Try: --set tx_power_dbm=10$/m],
    ["tx_power_dbm=", /tx_power_dbm/, /^Try: --set tx_power_dbm=18$/m],
    ["tx_power_dbm= ", /tx_power_dbm/, /^Try: --set tx_power_dbm=18$/m],
    ["tx_power_dbm=0x10", /from -60 to 40/, /^Try: /m],
    ["receivers_follow=perhaps", /yes, no, unknown/, /^Try: --set receivers_follow=unknown$/m],
    ["selectivity=3", /shape/, /profile file/],
    ["name=mine", /a figure of the profile/, /^Try: /m],
    ["", /FIGURE=VALUE/, /^Try: --set tx_power_dbm=10$/m],
  ])("%j: usage, with what would do", async (word, told, next) => {
    const { code, out, err } = await inProcess(["link", "--set", word]);
    expect([code, out]).toEqual([64, ""]);
    expect(err).toMatch(told);
    expect(err).toMatch(next);
  });
});

describe("a radio's name and whether its figures are generic", () => {
  const nameOf = async (args: readonly string[]): Promise<readonly [string, boolean]> => {
    const { profile } = await link(args);
    return [profile.name, profile.generic];
  };
  const sets = (...words: readonly string[]): string[] => words.flatMap((word) => ["--set", word]);

  test("as it is", async () => {
    expect(await nameOf([])).toEqual(["raster-13", true]);
  });
  test("single figures set: the name stays and says which; the rest is generic still", async () => {
    expect(await nameOf(sets("tx_power_dbm=10"))).toEqual(["raster-13 with txPowerDbm set", true]);
    expect(await nameOf(["--profile", "hop-79", ...sets("tx_power_dbm=10", "packet_ms=3")])).toEqual([
      "hop-79 with txPowerDbm and packetMs set",
      true,
    ]);
    expect((await nameOf(sets("packet_ms=3", "tx_gain_dbi=1", "rx_gain_dbi=1")))[0]).toBe(
      "raster-13 with 3 figures set",
    );
  });
  test("more than half of its figures the user's: generic no more", async () => {
    const nine = [
      "tx_power_dbm=10",
      "tx_gain_dbi=1",
      "rx_gain_dbi=1",
      "packet_ms=3",
      "frame_rate_hz=40",
      "noise_figure_db=9",
      "tx_feeder_loss_db=1",
      "sensitivity_dbm=-88",
      "receivers_follow=yes",
    ];
    expect((await nameOf(sets(...nine)))[1]).toBe(true); // 9 of 18
    expect((await nameOf(sets(...nine, "relink_s=5")))[1]).toBe(false);
  });
  test("a profile file's own name; it may say that it is not generic", async () => {
    const lines = "name: mine\nbased_on: raster-13\ntx_power_dbm: 10\n";
    expect(await nameOf(["--profile", file("a.yaml", lines)])).toEqual(["mine", true]);
    expect(await nameOf(["--profile", file("b.yaml", `${lines}generic: false\n`)])).toEqual(["mine", false]);
    expect(await nameOf(["--profile", file("a.yaml", lines), ...sets("packet_ms=3")])).toEqual([
      "mine with packetMs set",
      true,
    ]);
  });
});

describe("what `profiles NAME --json` prints, edited", () => {
  test("a changed value is the user's own, and a region does not turn it down", async () => {
    const printed = await printedProfile("raster-13");
    const [profile] = printed.profiles;
    const power = profile!["txPowerDbm"] as object;
    const edited = { ...profile, name: "mine", txPowerDbm: { ...power, value: 20 } };
    const path = file("mine.json", JSON.stringify({ ...printed, profiles: [edited] }));
    const { issues, profile: used } = await link(["--profile", path, "--region", "EU"]);
    expect(used.name).toBe("mine");
    expect(issues.map(({ code }) => code)).toEqual(["rule-breach"]);
    const whole = (await inProcess(["profiles", path, "--json"])).out;
    expect((JSON.parse(whole) as { profiles: ProfileJson[] }).profiles[0]!["txPowerDbm"]).toMatchObject({
      value: 20,
      status: "yours",
    });
  });
  test("unchanged, it is the built-in profile", async () => {
    const printed = await printedProfile("hop-79-avoid");
    const path = file("same.json", JSON.stringify(printed));
    expect((await printedProfile(path)).profiles).toEqual(printed.profiles);
  });
  test("of all profiles at once is no one profile", async () => {
    const { out } = await inProcess(["profiles", "--json"]);
    const { code, err } = await inProcess(["link", "--profile", file("all.json", out)]);
    expect(code).toBe(65);
    expect(err).toMatch(/all\.json: expected one profile, got 4\nTry: stillband profiles raster-13 --json/);
  });
});

test("a profile file is told of line by line, no escape among it, and with --json as issues", async () => {
  const bad = file("bad.yaml", 'name: mine\nbased_on: raster-13\ntx_power_dbm: "\\e[2J"\n"\\e[31m": 3\n');
  const { code, err } = await inProcess(["link", "--profile", bad]);
  expect(code).toBe(65);
  expect(err.trimEnd().split("\n")).toHaveLength(3);
  expect(err).not.toMatch(/\u001b/);
  const { out } = await inProcess(["link", "--json", "--profile", bad]);
  const { issues } = JSON.parse(out) as { readonly issues: readonly IssueJson[] };
  expect(issues.map(({ severity }) => severity)).toEqual(["error", "error"]);
});

test("nor does a profile's own name or title act on a terminal", async () => {
  const path = file("loud.yaml", 'name: "\\e[31mred"\ntitle: "\\e[2J"\nbased_on: raster-13\n');
  for (const args of [
    ["link", "--region", "EU", "--profile", path],
    ["survey", FOYER, "--profile", path],
    ["profiles", path],
  ]) {
    const { code, out, err } = await inProcess(args);
    expect(code).toBe(0);
    expect(`${out}${err}`).not.toMatch(/\u001b/);
    expect(out).toContain("\\u001b[31mred");
  }
});

test("the parser of profile files says nothing of its own on standard error", async () => {
  const odd = file("odd.yaml", "%FOO bar\n---\nname: mine\nbased_on: raster-13\n");
  const { code, err } = await stillband(["channel", FOYER, "--profile", odd]);
  expect([code, err]).toEqual([0, ""]);
});
