/** Strangers' names in the report page and its pictures: harmless, and left out where nobody asked for them. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { scratch } from "../cli/scratch.js";
import { stillband } from "../cli/stillband.js";
import { hostileVenue, NAMES } from "../page/hostile-venue.js";
import { NOTHING, pageOpener } from "./watched-page.js";

const { file, folder } = scratch();
const open = pageOpener();
const at = (...path: string[]): string => join(folder, ...path);

async function plan(venue: string, into: string, ...more: string[]): Promise<void> {
  const { code, err } = await stillband(["plan", venue, "-o", at(into), ...more]);
  expect(code, err).toBe(0);
}

describe("hostile names", () => {
  beforeAll(async () => {
    const more = ["--show-names", "--revision", NAMES[1], "--svg", at("pictures")];
    await plan(hostileVenue(file), "hostile", ...more);
  }, 120_000);

  // Each of them opens a dialog, a frame or a request where it is taken for more than text: the watch sees any.
  test("run nothing, fetch nothing and hide nothing, and stand there as text", async () => {
    const { page, doings } = await open(at("hostile", "report.html"));
    for (const details of await page.locator("details").all())
      await details.evaluate("(one) => { one.open = true }");
    const text = await page.locator("body").innerText();
    for (const name of NAMES.filter((one) => !one.includes("\u202e"))) expect(text).toContain(name);
    expect(text).toContain("a\\u202eb\\u2066c");
    expect(
      await page.locator("img, iframe, object, embed, form, link, base, a[href^=javascript]").count(),
    ).toBe(0);
    expect(await page.locator("script, style").count()).toBe(2);
    expect(doings).toEqual(NOTHING);
  });
  test("stay text when their table is sorted, filtered and copied, and are no formula where it is pasted", async () => {
    const { page, doings } = await open(at("hostile", "report.html"), {
      permissions: ["clipboard-read", "clipboard-write"],
    });
    const table = page.locator("table:has(> caption#address-table)");
    const tools = table.locator("xpath=../preceding-sibling::div[1]");
    await table.getByRole("button", { name: "luminaire" }).click();
    await tools.getByRole("searchbox").fill("=hyperlink");
    expect(await table.locator("tbody tr:visible").count()).toBe(1);
    await tools.getByRole("button", { name: "Copy table" }).click();
    await expect.poll(() => tools.getByRole("status").innerText()).toBe("Copied");
    const copied = await page.evaluate<string>("navigator.clipboard.readText()");
    expect(copied.split("\n")[1]).toMatch(/^'=HYPERLINK\(1\)\t/);
    expect(doings).toEqual(NOTHING);
  });
  test("do nothing in a picture opened alone", async () => {
    const pictures = readdirSync(at("pictures"));
    expect(pictures.length).toBeGreaterThan(3);
    for (const picture of pictures) {
      const { page, doings } = await open(at("pictures", picture));
      expect(await page.evaluate("document.documentElement.nodeName")).toBe("svg");
      expect(await page.locator("script, style, image, a, foreignObject, iframe").count()).toBe(0);
      expect(doings).toEqual(NOTHING);
    }
  });
});

describe("other people's names", () => {
  const DEMO = "fixtures/venues/ropewalk/venue.yaml";
  // Of fixtures/scans/ropewalk-*: the houses around, and phones in the audience.
  const NEIGHBOURS = ["Knot & Twine", "Café Wollknäuel", "hotspot of Tobiah", "Maja's pocket net"];
  beforeAll(async () => {
    await plan(DEMO, "hidden");
    await plan(DEMO, "shown", "--show-names");
  }, 120_000);
  const textOf = async (job: string): Promise<string> =>
    await (await open(at(job, "report.html"))).page.evaluate<string>("document.documentElement.outerHTML");

  test("are on no sheet, the building's own are", async () => {
    const text = (await textOf("hidden")).replaceAll("&amp;", "&");
    expect(NEIGHBOURS.filter((name) => text.includes(name))).toEqual([]);
    expect(text).toContain("Quillmere Guest");
  });
  test("are there when they are asked for", async () => {
    const text = (await textOf("shown")).replaceAll("&amp;", "&");
    expect(NEIGHBOURS.filter((name) => !text.includes(name))).toEqual([]);
  });
});
