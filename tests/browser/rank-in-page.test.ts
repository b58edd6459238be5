/** The example page: built by its own script, a scan dropped on it, its ranking against the command's. */
import { resolve } from "node:path";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import type { ScoreJson } from "../cli/json-types.js";
import { scanCsv } from "../cli/scan-rows.js";
import { scratch } from "../cli/scratch.js";
import { CROWDED, FULL, PROJECT, run, SCANS, stillband } from "../cli/stillband.js";
import { axeFaults } from "./axe.js";
import { NOTHING, pageOpener, PHONE } from "./watched-page.js";

const { file, folder } = scratch();
const open = pageOpener();
const PAGE = resolve(folder, "rank.html");

beforeAll(async () => {
  const { code, err } = await run(process.execPath, ["fixtures/examples/rank-in-page/build.mjs", PAGE]);
  expect(code, err).toBe(0);
});

/** Drags a file from the desktop onto the page and lets it go. */
async function drop(page: Page, path: string): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const data = { items: [], files: [resolve(PROJECT, path)], dragOperationsMask: 1 };
  for (const type of ["dragEnter", "dragOver", "drop"] as const)
    await session.send("Input.dispatchDragEvent", { type, x: 100, y: 100, data });
  await expect.poll(() => page.locator("output").textContent()).not.toBe("No scan yet.");
}

async function rowsOf(page: Page): Promise<string[][]> {
  const rows = await page.locator("tbody tr").all();
  return await Promise.all(rows.map((row) => row.locator("td").allTextContents()));
}

interface ChannelJson {
  readonly ranking: readonly ScoreJson[];
  readonly recommended: { readonly channel: number };
  readonly backup: { readonly channel: number };
  readonly link: { readonly rows: readonly LinkRowJson[] };
}
interface LinkRowJson {
  readonly distanceM: number;
  readonly workingMarginDb: number;
  readonly verdict: string;
}

const commands = async (scan: string): Promise<ChannelJson> => {
  const { code, out, err } = await stillband(["channel", "--json", scan]);
  expect(code, err).toBe(0);
  return JSON.parse(out) as ChannelJson;
};

test.each([
  ["a scan CSV", FULL, "Use"],
  ["a band with nothing clear", CROWDED, "Nothing holds; least bad:"],
  ["a power sweep", `${SCANS}/ropewalk-full-sweep.csv`, "Use"],
])("%s is ranked as by the command, the answer first", async (_what, scan, lead) => {
  const { page, doings } = await open(PAGE);
  await drop(page, scan);
  const { ranking, recommended, backup, link } = await commands(scan);
  const [use, fallback] = [recommended, backup].map(
    ({ channel }) => `radio ch ${channel} (${2407 + 5 * channel} MHz)`,
  );
  const { verdict, workingMarginDb } = link.rows.find(({ distanceM }) => distanceM === 20)!;
  expect(await page.locator("output").textContent()).toBe(
    `${lead} ${use}; fallback ${fallback}. Link ${verdict} at 20 m: ${workingMarginDb.toFixed(1)} dB to spare.`,
  );
  expect((await rowsOf(page)).map((cells) => cells.slice(0, 4))).toEqual(
    ranking.map(({ rank, channel, marginDb, clearAirRatio }) => [
      String(rank),
      `${channel} (${2407 + 5 * channel} MHz)`,
      `${marginDb.toFixed(1)} dB`,
      `${(100 * clearAirRatio).toFixed(1)} %`,
    ]),
  );
  expect(doings).toEqual(NOTHING);
});

test("what is chosen is read like what is dropped, and what is no scan says so", async () => {
  const { page, doings } = await open(PAGE);
  await page.locator("input").setInputFiles(FULL);
  await expect.poll(() => page.locator("tbody tr").count()).toBe(13);
  expect(await page.locator("table").isVisible()).toBe(true);
  await page.locator("input").setInputFiles(file("<b>notes.txt", "Nothing about radio at all.\n"));
  await expect.poll(() => page.locator("output").textContent()).toMatch(/^Nothing usable in <b>notes\.txt/);
  expect(await page.locator("table").isVisible()).toBe(false);
  expect(doings).toEqual(NOTHING);
});

describe("strangers' names", () => {
  const names = [
    `<script>document.title = "Ran"</script>`,
    `<img src=x onerror="document.title = 'Ran'">`,
    `<svg onload="document.title = 'Ran'">`,
    `</td></table><iframe src="http://192.0.2.1/">`,
    "\u202egnp.exe",
  ];
  test("are text and do nothing", async () => {
    const { page, doings } = await open(PAGE);
    const rows = names.map((ssid, index) => {
      const channel = 1 + 3 * index;
      return { bssid: `02:00:00:00:00:${10 + channel}`, ssid, channel, signal: -40 };
    });
    await drop(page, file("hostile.csv", scanCsv(rows)));
    const shown = new Set((await rowsOf(page)).map((cells) => cells[4]));
    for (const { ssid, channel } of rows) {
      const harmless = ssid.replace("\u202e", "\\u202e");
      const cut = harmless.length <= 40 ? harmless : `${harmless.slice(0, 39)}…`;
      expect(shown).toContain(`Wi-Fi ch ${channel} ${cut}`);
    }
    expect(await page.title()).toBe("Which radio channel?");
    expect(await page.locator("img, svg, iframe, td script").count()).toBe(0);
    expect(doings).toEqual(NOTHING);
  });
  test("would be caught by the page's policy too", async () => {
    const { page, doings } = await open(PAGE);
    await page.evaluate(`document.body.insertAdjacentHTML("beforeend", ${JSON.stringify(names[1])})`);
    await expect.poll(() => doings.violations).toContain("script-src-attr inline");
    expect(await page.title()).toBe("Which radio channel?");
  });
});

test.each([
  ["light", { colorScheme: "light" }],
  ["dark", { colorScheme: "dark" }],
] as const)("axe-core finds nothing wrong with it, %s", async (_name, media) => {
  const { page, doings } = await open(PAGE, { media });
  if (media.colorScheme === "light") expect(await axeFaults(page)).toEqual([]);
  await drop(page, FULL);
  expect(await axeFaults(page)).toEqual([]);
  expect(doings).toEqual(NOTHING);
});

test("on a phone nothing runs past the edge", async () => {
  const { page } = await open(PAGE, { viewport: PHONE });
  await drop(page, FULL);
  expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(PHONE.width);
});
