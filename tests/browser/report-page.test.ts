/** The report page that the command writes, used as its readers use it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import { scratch } from "../cli/scratch.js";
import { stillband } from "../cli/stillband.js";
import { figureFaults, isRounded } from "../page/figure-faults.js";
import { axeFaults } from "./axe.js";
import { LAPTOP, NOTHING, pageOpener, PHONE } from "./watched-page.js";

const { folder } = scratch();
const open = pageOpener();
const REPORT = join(folder, "job/report.html");
const PLAN = join(folder, "job/plan.json");

interface PlanJson {
  readonly links: {
    readonly systems: readonly { readonly receivers: readonly ReceiverJson[] }[];
  };
}
interface ReceiverJson {
  readonly receiver: string;
  readonly distanceM: number;
  readonly workingMarginDb: number;
}

let receivers: readonly ReceiverJson[];

beforeAll(async () => {
  const more = ["--date", "2026-03-09T10:15:00Z", "--revision", "C"];
  const venue = "fixtures/venues/ropewalk/venue.yaml";
  const { code, err } = await stillband(["plan", venue, "-o", join(folder, "job"), ...more]);
  expect(code, err).toBe(0);
  const plan = JSON.parse(readFileSync(PLAN, "utf8")) as PlanJson;
  receivers = plan.links.systems[0]!.receivers;
}, 120_000);

const tableOf = (page: Page, id: string): Locator => page.locator(`table:has(> caption#${id})`);
const toolsOf = (table: Locator): Locator => table.locator("xpath=../preceding-sibling::div[1]");
/** Of the rows that are shown, in their order. */
async function namesOf(table: Locator): Promise<string[]> {
  return await table.locator("tbody tr:visible td:nth-of-type(1)").allInnerTexts();
}
async function sortBy(table: Locator, head: string): Promise<string | null> {
  await table.getByRole("button", { name: head }).click();
  return await table.locator("th", { hasText: head }).getAttribute("aria-sort");
}
const namesBy = (key: "distanceM" | "workingMarginDb"): string[] =>
  [...receivers].sort((a, b) => a[key] - b[key]).map(({ receiver }) => receiver);

test("it loads without a word, an exception, a breach of its policy or a request", async () => {
  const { page, doings } = await open(REPORT);
  expect(await page.title()).toBe("Wireless DMX plan: The Quillmere Ropewalk");
  expect(await page.locator("figure svg").count()).toBeGreaterThan(10);
  expect(doings).toEqual(NOTHING);
});

test("each of its figures is the plan file's number beside it, rounded", () => {
  const html = readFileSync(REPORT, "utf8");
  expect(html.match(/<data /g)!.length).toBeGreaterThan(1000);
  expect(figureFaults(html, JSON.parse(readFileSync(PLAN, "utf8")))).toEqual([]);
});

describe("a table is sorted", () => {
  test("by numbers, not by their letters, forth, back and as it was", async () => {
    const { page } = await open(REPORT);
    const table = tableOf(page, "receivers-0");
    const asGiven = await namesOf(table);
    expect(await sortBy(table, "distance")).toBe("ascending");
    expect(await namesOf(table)).toEqual(namesBy("distanceM"));
    expect(namesBy("distanceM")).not.toEqual(asGiven);
    expect(await sortBy(table, "distance")).toBe("descending");
    expect(await namesOf(table)).toEqual(namesBy("distanceM").reverse());
    expect(await sortBy(table, "distance")).toBeNull();
    expect(await namesOf(table)).toEqual(asGiven);
  });
  test("in feet as in metres, negative numbers too, and by one column at a time", async () => {
    const { page } = await open(REPORT);
    await page.getByRole("button", { name: "feet" }).click();
    const table = tableOf(page, "receivers-0");
    await sortBy(table, "distance");
    expect(await namesOf(table)).toEqual(namesBy("distanceM"));
    await sortBy(table, "to spare");
    expect(await namesOf(table)).toEqual(namesBy("workingMarginDb"));
    expect(await table.locator("th[aria-sort]").allInnerTexts()).toEqual([
      expect.stringMatching(/^to spare/),
    ]);
  });
  test("by names with numbers in them as a reader counts", async () => {
    const { page } = await open(REPORT);
    const table = tableOf(page, "receivers-0");
    await sortBy(table, "receiver");
    const names = await namesOf(table);
    expect(names.map((name) => Number(name.slice(1)))).toEqual(names.map((_, index) => index + 1));
  });
  test("from the keyboard", async () => {
    const { page } = await open(REPORT);
    const table = tableOf(page, "receivers-0");
    await table.getByRole("button", { name: "distance" }).focus();
    await page.keyboard.press("Enter");
    expect(await namesOf(table)).toEqual(namesBy("distanceM"));
  });
});

test("a filter leaves the rows that say what is sought, counts them, and lets go of the rest", async () => {
  const { page, doings } = await open(REPORT);
  const table = tableOf(page, "sources-0");
  const all = await table.locator("tbody tr").allTextContents();
  const sought = all.filter((text) => text.toLowerCase().includes("foyer"));
  expect(sought.length).toBeGreaterThan(1);
  expect(sought.length).toBeLessThan(all.length);
  const field = toolsOf(table).getByRole("searchbox");
  await field.fill("Foyer");
  expect(await table.locator("tbody tr:visible").allTextContents()).toEqual(sought);
  expect(await toolsOf(table).getByRole("status").innerText()).toBe(`${sought.length} of ${all.length} rows`);
  await field.fill("");
  expect(await table.locator("tbody tr:visible").count()).toBe(all.length);
  expect(await toolsOf(table).getByRole("status").innerText()).toBe("");
  expect(doings).toEqual(NOTHING);
});

describe("a table is copied", () => {
  const permissions = ["clipboard-read", "clipboard-write"];
  test("as lines and tabs, only the rows that are shown", async () => {
    const { page, doings } = await open(REPORT, { permissions });
    const table = tableOf(page, "receivers-0");
    await toolsOf(table).getByRole("searchbox").fill("H1");
    const shown = await namesOf(table);
    await toolsOf(table).getByRole("button", { name: "Copy table" }).click();
    await expect.poll(() => toolsOf(table).getByRole("status").innerText()).toBe("Copied");
    const text = await page.evaluate<string>("navigator.clipboard.readText()");
    const [head, ...rows] = text.split("\n").map((line) => line.split("\t"));
    expect(head!.slice(0, 4)).toEqual(["#", "receiver", "distance", "to spare"]);
    expect(rows.map((cells) => cells[1])).toEqual(shown);
    expect(new Set(rows.map(({ length }) => length))).toEqual(new Set([head!.length]));
    const weakest = receivers.find(({ receiver }) => receiver === shown[0])!;
    expect(rows[0]![2]).toBe(`${weakest.distanceM.toFixed(1)} m`);
    expect(doings).toEqual(NOTHING);
  });
  test("or selected, where the browser refuses", async () => {
    const { page } = await open(REPORT);
    await page.evaluate("navigator.clipboard.writeText = () => Promise.reject(new Error('refused'))");
    const table = tableOf(page, "receivers-0");
    await toolsOf(table).getByRole("button", { name: "Copy table" }).click();
    await expect.poll(() => toolsOf(table).getByRole("status").innerText()).toMatch(/^Selected: copy it/);
    expect(await page.evaluate<string>("getSelection().toString()")).toContain(receivers[0]!.receiver);
  });
});

test("feet and metres change every length of the page, and back", async () => {
  const { page } = await open(REPORT);
  const lengths = async (): Promise<ShownLength[]> =>
    await page.evaluate<ShownLength[]>(`
      [...document.querySelectorAll("data[data-unit=m]")].filter((one) => one.checkVisibility()).map((one) => ({
        text: one.innerText,
        value: Number(one.value),
        from: one.dataset.from.startsWith("/") ? one.dataset.from
          : one.closest("[data-at]").dataset.at + "/" + one.dataset.from,
      }))`);
  const metres = await lengths();
  expect(metres.length).toBeGreaterThan(100);
  await page.getByRole("button", { name: "feet" }).click();
  const feet = await lengths();
  expect(feet).toHaveLength(metres.length);
  for (const { text, value, from } of [...metres, ...feet])
    expect(isRounded(value, text, from), text).toBe(true);
  expect(feet.filter(({ text }) => !/ft$|["']/.test(text))).toEqual([]);
  // The foot is 0.3048 m exactly.
  const distance = feet.find(({ from }) => from.endsWith("/distanceM"))!;
  expect(distance.text).toBe(`${(distance.value / 0.3048).toFixed(1)} ft`);
  expect(await page.locator("button[aria-pressed=true]").allInnerTexts()).toEqual(["feet"]);
  await page.getByRole("button", { name: "metres" }).click();
  expect(await lengths()).toEqual(metres);
  // A drawing's scale has a bar of each, whatever the tables say.
  for (const unit of ["m", "ft"])
    expect(await page.locator(`path.scale.${unit}`).first().isVisible()).toBe(true);
});

interface ShownLength {
  readonly text: string;
  readonly value: number;
  readonly from: string;
}

test("without scripts there are no controls, and all that they work on is there", async () => {
  const counts = async (page: Page): Promise<number[]> =>
    await Promise.all(["table", "tbody tr", "figure svg"].map((what) => page.locator(what).count()));
  const { page } = await open(REPORT, { javaScriptEnabled: false });
  expect(await counts(page)).toEqual(await counts((await open(REPORT)).page));
  expect(await page.locator("button, input").count()).toBe(0);
  expect(await page.locator("data span.m").first().isVisible()).toBe(true);
  expect(await page.locator("data span.ft").first().isVisible()).toBe(false);
  await page.locator("summary", { hasText: "How these figures came about" }).first().click();
  expect(await tableOf(page, "budget-0").isVisible()).toBe(true);
});

describe("it is shown", () => {
  const rgbOf = async (page: Page, of: "color" | "backgroundColor"): Promise<number> => {
    const rgb = await page.evaluate<string>(`getComputedStyle(document.body).${of}`);
    return Math.max(...[...rgb.matchAll(/\d+/g)].map(Number));
  };
  test("light on dark where that is asked for, and dark on light in print all the same", async () => {
    const { page } = await open(REPORT, { media: { colorScheme: "dark" } });
    expect(await rgbOf(page, "backgroundColor")).toBeLessThan(64);
    expect(await rgbOf(page, "color")).toBeGreaterThan(192);
    await page.emulateMedia({ colorScheme: "dark", media: "print" });
    expect(await rgbOf(page, "backgroundColor")).toBe(255);
    expect(await rgbOf(page, "color")).toBe(0);
  });
  test("on a phone with nothing past its edge and the answer on the first screen", async () => {
    const { page, doings } = await open(REPORT, { viewport: PHONE });
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBe(PHONE.width);
    const answer = await page.locator("dt", { hasText: "Weakest" }).first().boundingBox();
    expect(answer!.y + answer!.height).toBeLessThan(PHONE.height);
    expect(doings).toEqual(NOTHING);
  });
  test("on a laptop with the whole answer on the first screen", async () => {
    const { page } = await open(REPORT);
    const answer = await page.locator(".glance").first().boundingBox();
    expect(answer!.y + answer!.height).toBeLessThan(LAPTOP.height);
  });
  // ISO 216 and ANSI Y14.1: 210 and 215.9 mm wide; less two margins of 13 mm, at 96 px an inch of 25.4 mm.
  test.each([
    ["A4", 210],
    ["Letter", 215.9],
  ] as const)(
    "on %s with every table inside its page, a page or more a sheet, no controls",
    async (format, widthMm) => {
      const width = Math.floor(((widthMm - 26) / 25.4) * 96);
      const { page } = await open(REPORT, { viewport: { width, height: 1000 }, media: { media: "print" } });
      const tables = await page.evaluate<number[]>(
        `[...document.querySelectorAll("table, svg")].map((one) => one.getBoundingClientRect().right)`,
      );
      expect(tables.length).toBeGreaterThan(30);
      expect(tables.filter((right) => right > width)).toEqual([]);
      expect(await page.locator("button:visible:not(thead button), input:visible").count()).toBe(0);
      const sheets = await page.locator("section.sheet").count();
      const printed = (await page.pdf({ format, preferCSSPageSize: false })).toString("latin1");
      expect(printed.match(/\/Type \/Page\b/g)!.length).toBeGreaterThanOrEqual(sheets);
    },
  );
});

test.each([
  ["light", { media: { colorScheme: "light" } }],
  ["dark", { media: { colorScheme: "dark" } }],
  ["on a phone", { viewport: PHONE }],
] as const)(
  "axe-core finds nothing wrong with it, %s",
  async (_how, showing) => {
    const { page, doings } = await open(REPORT, showing);
    await page.evaluate("for (const one of document.querySelectorAll('details')) one.open = true");
    expect(await axeFaults(page)).toEqual([]);
    expect(doings).toEqual(NOTHING);
  },
  120_000,
);
