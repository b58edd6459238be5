/** `profiles` with `--template` and `--region`, and the file that comes of it: edited, mistaken, judged. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { builtInProfiles, regionRules } from "../../src/radio/index.js";
import { tooWide } from "./columns.js";
import type { IssueJson } from "./json-types.js";
import { schemaFaults } from "./schemas.js";
import { scratch } from "./scratch.js";
import { FOYER, inProcess } from "./stillband.js";

const { file, folder } = scratch();

interface FigureJson {
  readonly value: unknown;
  readonly status: string;
}
interface ProfilesJson {
  readonly issues: readonly IssueJson[];
  readonly profiles: readonly Readonly<Record<string, FigureJson>>[];
  readonly regulation?: { readonly rule: { readonly region: string }; readonly judged: readonly object[] };
}

async function printed(args: readonly string[]): Promise<ProfilesJson> {
  const { code, out } = await inProcess(["profiles", ...args, "--json"]);
  expect(code).toBe(0);
  const value = JSON.parse(out) as ProfilesJson;
  expect(schemaFaults("profiles", value)).toEqual([]);
  return value;
}

async function template(name: string): Promise<string> {
  const { code, out, err } = await inProcess(["profiles", name, "--template"]);
  expect([code, err]).toEqual([0, ""]);
  return out;
}

describe("--template", () => {
  test.each(builtInProfiles.map(({ name }) => name))(
    "%s: as it stands, its figures; no escape, no tab",
    async (name) => {
      const text = await template(name);
      expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
      const [own] = (await printed([name])).profiles;
      const [back] = (await printed([file(`${name}.yaml`, text)])).profiles;
      expect({ ...back, name: own!["name"], title: own!["title"] }).toEqual(own);
    },
  );
  test("-o writes it to a file, whole", async () => {
    const path = join(folder, "out.yaml");
    const { code, out } = await inProcess(["profiles", "hop-79", "--template", "-o", path]);
    expect([code, out]).toEqual([0, ""]);
    expect(readFileSync(path, "utf8")).toBe(await template("hop-79"));
  });
  test.each([
    [[], /a profile's name/],
    [["raster-13", "--json"], /not with --json/],
    [["raster-13", "--region", "EU"], /not with --region/],
  ])("%j: usage, with what would do", async (args, told) => {
    const { code, out, err } = await inProcess(["profiles", "--template", ...args]);
    expect([code, out]).toEqual([64, ""]);
    expect(err).toMatch(told);
    expect(err).toMatch(/^Try: stillband profiles raster-13 --template/m);
  });
  test("what is changed in it is the user's own, the rest is not", async () => {
    const text = (await template("hop-79-avoid"))
      .replace("value: 18\n", "value: 20\n")
      .replace("[2.5, -41]", "[2.6, -41]")
      .replace("value: 15\n", "value: 20\n")
      .replace("channel_count: 79", "channel_count: 60");
    const [profile] = (await printed([file("edited.yaml", text)])).profiles;
    const yours = Object.entries(profile!).filter(([, part]) => part.status === "yours");
    expect(yours.map(([name]) => name).sort()).toEqual(["channelsOrigin", "selectivity", "txPowerDbm"]);
    expect(profile!["hopping"]).toMatchObject({ leastHopCount: { value: 20, status: "yours" } });
    expect(profile!["emission"]!.status).toBe("standard");
  });
  test("a changed power is not turned down by a region", async () => {
    const path = file("loud.yaml", (await template("raster-13")).replace("value: 18\n", "value: 20\n"));
    const { out } = await inProcess(["link", "--profile", path, "--region", "EU", "--json"]);
    const { issues } = JSON.parse(out) as ProfilesJson;
    expect(issues.map(({ code }) => code)).toEqual(["rule-breach"]);
  });
});

describe("a mistake in a profile file is told by its line", () => {
  const lines = async (
    name: string,
    text: string,
  ): Promise<(readonly [number | undefined, string | undefined])[]> => {
    const { code, out } = await inProcess(["link", "--json", "--profile", file(name, text)]);
    expect(code).toBe(65);
    return (JSON.parse(out) as ProfilesJson).issues.map(({ line, column }) => [line, column]);
  };
  test("in YAML: a value, within a list, within a figure, an unknown key; in the order of the file", async () => {
    const text = [
      "# a radio", // 1
      "name: mine",
      "based_on: raster-13",
      "",
      "tx_power_dbm: 99", // 5
      "channels:",
      "  - { channel: 1, centre_mhz: 2412 }",
      "  - { channel: 2,",
      "      centre_mhz: 24 }", // 9
      "packt_ms: 3", // 10
      "sensitivity_dbm:",
      "  status: yours",
      '  value: "low"', // 13
    ].join("\n");
    expect(await lines("bad.yaml", text)).toEqual([
      [5, "txPowerDbm"],
      [9, "channels[1].centreMhz"],
      [10, "packt_ms"],
      [13, "sensitivityDbm.value"],
    ]);
  });
  test("in JSON as printed, wrapped in its list of profiles", async () => {
    const { out } = await inProcess(["profiles", "raster-13", "--json"]);
    const value = JSON.parse(out) as { profiles: Record<string, Record<string, unknown>>[] };
    value.profiles[0]!["packetMs"]!["value"] = "long";
    const text = JSON.stringify(value, null, 2);
    const at = text.split("\n").findIndex((line) => line.includes('"long"')) + 1;
    expect(at).toBeGreaterThan(50);
    expect(await lines("bad.json", text)).toEqual([[at, "packetMs.value"]]);
  });
  test("what is missing has no line; a file that is no YAML has the parser's", async () => {
    expect((await lines("short.yaml", "name: mine\n")).every(([line]) => line === undefined)).toBe(true);
    expect(await lines("broken.yaml", "name: mine\npacket_ms: [1\ntx: 2\n")).toEqual([
      [expect.any(Number), undefined],
    ]);
  });
  test("a figure set by an option is not told at the file's line", async () => {
    const path = file("mine.yaml", "name: mine\nbased_on: raster-13\nsensitivity_dbm: -85\n");
    const { out } = await inProcess(["link", "--json", "--profile", path, "--set", "sensitivity_dbm=-120"]);
    const { issues } = JSON.parse(out) as ProfilesJson;
    expect(issues.map(({ column, line }) => [column, line])).toEqual([["sensitivityDbm", undefined]]);
  });
  test("the sentence names file, line and key", async () => {
    const { err } = await inProcess([
      "link",
      "--profile",
      file("one.yaml", "based_on: raster-13\ntx_power_dbm: 99\n"),
    ]);
    expect(err).toMatch(/one\.yaml:2 column "txPowerDbm": expected a power in dBm from -60 to 40, got "99"/);
  });
});

describe("--region", () => {
  test.each(Object.keys(regionRules))(
    "%s: every row with its source, the profiles judged, in 80 columns",
    async (region) => {
      const { code, out, err } = await inProcess(["profiles", "--region", region]);
      expect([code, err]).toEqual([0, ""]);
      expect(tooWide(out, 80)).toEqual([]);
      const words = out.replace(/\s+/g, " ");
      const rule = regionRules[region as keyof typeof regionRules];
      for (const { maxEirpDbm, maxConductedDbm, leastHopCount, dwells } of rule.rules)
        for (const figure of [
          maxEirpDbm,
          maxConductedDbm,
          leastHopCount,
          ...dwells.map((each) => each.mostDwellS),
        ])
          if (figure !== null) expect(words).toContain(`(${figure.source}; ${figure.reading})`);
      for (const { name } of builtInProfiles) expect(words).toContain(` ${name} `);
      expect(words).toContain("the local rule and the radio's own approval decide");
    },
  );
  test("of one profile, every point; of all, a line each; as JSON the same", async () => {
    const { out } = await inProcess(["profiles", "hop-79", "--region", "gb"]);
    const words = out.replace(/\s+/g, " ");
    expect(words).toMatch(
      /Power: 20\.0 dBm EIRP used, at most 20\.0 dBm for a hopping radio.*EN 300 328.*from memory/,
    );
    expect(words).toMatch(/medium use .*19\.8 %, at most 10\.0 % .*this radio must be adaptive/);
    expect(words).toMatch(/Cross-check only: a driver's table of the open regulatory database, not the rule/);
    const { profiles, regulation } = await printed(["hop-79", "--region", "GB"]);
    expect([profiles.length, regulation!.rule.region]).toEqual([1, "GB"]);
    expect(regulation!.judged).toMatchObject([
      { profile: "hop-79", eirpDbm: 20, breaches: [], crossCheck: { country: "GB" } },
    ]);
    expect((await printed(["--region", "US"])).regulation!.judged.length).toBe(4);
  });
  test("an unknown region: usage, with the nearest", async () => {
    const { code, err } = await inProcess(["profiles", "--region", "UX"]);
    expect(code).toBe(64);
    expect(err).toMatch(/US, CA, EU, GB, AU, NZ, JP, world/);
  });
});

describe("the section Regulation of channel and link", () => {
  const section = async (args: readonly string[]): Promise<string> => {
    const { out } = await inProcess(args);
    return (/\nRegulation: [\s\S]*?\n\n/.exec(out)?.[0] ?? "").replace(/\s+/g, " ");
  };
  test("is there with a region only", async () => {
    expect(await section(["link"])).toBe("");
    expect(await section(["channel", FOYER])).toBe("");
  });
  test.each([["link"], ["channel", FOYER]])(
    "%s: rule, number, source, cross-check, local rules",
    async (...command) => {
      const words = await section([...command, "--region", "EU"]);
      expect(words).toMatch(
        /10\.0 dBm EIRP used, at most 10\.0 dBm for a fixed channel with this antenna: EN 300 328/,
      );
      expect(words).toMatch(/Band: 2400–2483\.5 MHz \(EN 300 328/);
      expect(words).toMatch(
        /Cross-check only: .*DE, as each member state: 2400–2483\.5 MHz, 20\.0 dBm; our EIRP lies within it/,
      );
      expect(words).toMatch(/the local rule and the radio's own approval decide/);
      expect(words).not.toContain("BREACH");
    },
  );
  test("a breach names the number, the rule and what to turn", async () => {
    const words = await section(["link", "--region", "GB", "--set", "tx_power_dbm=20"]);
    expect(words).toMatch(
      /BREACH: 22\.0 dBm EIRP is 12\.0 dB above the 10\.0 dBm of EN 300 328.*turn the power down by that/,
    );
    expect(words).toMatch(/our EIRP is 2\.0 dB above it/);
  });
  test("too few hop frequencies are an error in the report, not a bug of ours", async () => {
    const path = file(
      "few.yaml",
      "based_on: hop-79\nchannels: { channel: 0, centre_mhz: 2410, spacing_mhz: 2, channel_count: 10 }\n",
    );
    const { code, out } = await inProcess(["link", "--profile", path, "--region", "EU", "--json"]);
    expect(code).toBe(0);
    const { issues, regulation } = JSON.parse(out) as {
      issues: IssueJson[];
      regulation: { breaches: object[] };
    };
    expect(issues).toMatchObject([{ code: "rule-breach", severity: "error" }]);
    expect(regulation.breaches).toMatchObject([{ code: "hop-count", hopCount: 10 }]);
  });
  test("as JSON: null without a region, else the same figures; both hold to the schema", async () => {
    for (const [command, args] of [
      ["link", []],
      ["channel", [FOYER]],
    ] as const)
      for (const region of [[], ["--region", "US"], ["--region", "world", "--profile", "hop-79"]]) {
        const { out } = await inProcess([command, ...args, ...region, "--json"]);
        const value = JSON.parse(out) as {
          regulation: { crossCheck: { outside: { channel: number }[] } } | null;
        };
        expect(schemaFaults(command, value).filter((fault) => fault.startsWith("/regulation"))).toEqual([]);
        if (region.length === 0) expect(value.regulation).toBeNull();
        else expect(value.regulation!.crossCheck.outside[0]!.channel).toBe(region.length === 2 ? 13 : 0);
      }
  });
});
