/** The built library in a real browser: the same ranking as the command, and nothing asked of Node. */
import { describe, expect, test } from "vitest";
import { scratch } from "../cli/scratch.js";
import { CROWDED, FOYER, FULL, SCANS, stillband } from "../cli/stillband.js";
import type { ScoreJson } from "../cli/json-types.js";
import { browserBundle } from "../tools/browser-bundle.js";
import { NOTHING, pageOpener } from "./watched-page.js";

const { file } = scratch();
const open = pageOpener();

/** What an embedder writes: the doors of scan and scorer, and the plan that gives each channel its wanted level. */
const EMBEDDER = `
  import { buildSurvey, readScan, sweepReceiverOf, toEmitters } from "stillband/scan";
  import { rankChannels } from "stillband/scorer";
  import { planChannel } from "stillband/venue";
  import { findProfile } from "stillband/radio";
  globalThis.rank = async ({ profileName, fill }) => {
    const profile = findProfile(profileName);
    const [file] = document.querySelector("input").files;
    const bytes = new Uint8Array(await file.arrayBuffer());
    const scan = await readScan(bytes, { source: file.name, sweepReceiver: sweepReceiverOf(profile), ...fill });
    const survey = buildSurvey([scan]);
    const scene = { emitters: toEmitters(survey), sweeps: survey.sweepLevels, profile };
    const plan = planChannel(scene);
    const wantedDbm = profile.channels.map(
      ({ channel }) => plan.ranking.find((score) => score.channel === channel).wantedDbm,
    );
    return { planned: plan.ranking, ranked: rankChannels({ ...scene, wantedDbm }).ranking };
  };
`;

/** Names that Node has and a browser has not: reading one, even for its type, is noted. */
const NODES = ["process", "Buffer", "require", "module", "exports", "setImmediate", "__dirname"];
const TRAPS = `
  globalThis.asked = [];
  for (const name of ${JSON.stringify(NODES)})
    Object.defineProperty(globalThis, name, { get: () => void globalThis.asked.push(name) });
`;

type Ranking = readonly Pick<ScoreJson, "rank" | "channel" | "marginDb" | "clearAirRatio">[];

let bundled: Promise<string> | undefined;

const page = async () => {
  const code = await (bundled ??= browserBundle(EMBEDDER, { format: "iife" }));
  const body = `<input type="file" aria-label="scan"><script>${TRAPS}</script><script>${code}</script>`;
  return await open(
    file("embedder.html", `<!doctype html><meta charset="utf-8"><title>Embedder</title>${body}`),
  );
};

describe("scan and scorer in Chromium", () => {
  test.each([
    ["raster-13", FULL, {}],
    ["raster-16", FULL, {}],
    ["hop-79", FULL, {}],
    ["raster-13", CROWDED, {}],
    ["raster-13", FOYER, { place: "foyer", crowd: "part" }],
    ["raster-13", `${SCANS}/dialects/quoted-names.csv`, {}],
    ["raster-13", `${SCANS}/dialects/utf-16le.csv`, {}],
    ["raster-13", `${SCANS}/ropewalk-full-sweep.csv`, { place: "hall front", crowd: "full" }],
  ] as const)(
    "%s on %s %j: the command's channels, margins and clear air",
    async (profileName, scan, fill) => {
      const { page: shown, doings } = await page();
      await shown.locator("input").setInputFiles(scan);
      const setting = JSON.stringify({ profileName, fill });
      const { planned, ranked } = await shown.evaluate<Record<"planned" | "ranked", Ranking>>(
        `rank(${setting})`,
      );

      const filled = Object.entries(fill).flatMap(([name, value]) => [`--${name}`, value]);
      const { code, out, err } = await stillband([
        "channel",
        "--json",
        "--profile",
        profileName,
        ...filled,
        scan,
      ]);
      expect(code, err).toBe(0);
      const { ranking } = JSON.parse(out) as { readonly ranking: Ranking };
      expect(ranking.length).toBeGreaterThan(12);
      for (const found of [planned, ranked]) {
        expect(found.map(({ channel }) => channel)).toEqual(ranking.map(({ channel }) => channel));
        for (const [index, { marginDb, clearAirRatio }] of found.entries()) {
          expect(Math.abs(marginDb - ranking[index]!.marginDb)).toBeLessThanOrEqual(1e-9);
          expect(Math.abs(clearAirRatio - ranking[index]!.clearAirRatio)).toBeLessThanOrEqual(1e-9);
        }
      }
      expect(await shown.evaluate("asked")).toEqual([]);
      expect(doings).toEqual(NOTHING);
    },
  );
  test("a page that asks for one of Node's names is caught", async () => {
    const { page: shown } = await page();
    expect(await shown.evaluate("typeof process + typeof Buffer + asked")).toBe(
      "undefinedundefinedprocess,Buffer",
    );
  });
});
