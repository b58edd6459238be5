/** Names are strangers' or typed by anybody: whatever they hold, the page shows it and does nothing by it. */
import { beforeAll, describe, expect, test } from "vitest";
import { planPage, planPictures } from "../../src/page/index.js";
import { planJson } from "../../src/report/index.js";
import type { PlanReport } from "../../src/report/index.js";
import { scratch } from "../cli/scratch.js";
import { hostileVenue, NAMES } from "./hostile-venue.js";
import { sha256Base64, tagsOf, textOf } from "./page-html.js";
import { plannedVenue } from "./planned-venue.js";

const { file } = scratch();
let report: PlanReport;
let page: string;

beforeAll(async () => {
  report = await plannedVenue(hostileVenue(file), {
    revision: NAMES[1],
    showsNames: true,
    inputs: [{ name: NAMES[2], kind: "venue", digest: "sha256:00" }],
  });
  page = planPage(report, planJson(report), planPictures(report), sha256Base64);
}, 240_000);

describe("hostile names", () => {
  test("make no element: the page has those of a harmless one", () => {
    const names = new Set(tagsOf(page).map(({ name }) => name));
    for (const strange of ["img", "iframe", "object", "embed", "link", "form", "base"])
      expect(names).not.toContain(strange);
    expect(tagsOf(page).filter(({ name }) => name === "script" || name === "style")).toHaveLength(2);
    expect(page.match(/<script/gi)).toHaveLength(1);
    expect(page.match(/<\/style/gi)).toHaveLength(1);
    expect(page.match(/<\/title/gi)!.length).toBe(page.match(/<title/gi)!.length);
  });
  test("make no attribute and no address", () => {
    const tags = tagsOf(page);
    const keys = tags.flatMap(({ attributes }) => [...attributes.keys()]);
    expect(keys.filter((key) => /^on/i.test(key) || key === "style" || key === "src")).toEqual([]);
    const links = tags.flatMap(({ attributes }) => attributes.get("href") ?? []);
    expect(links.filter((link) => !link.startsWith("#"))).toEqual([]);
  });
  test("are shown as they are, controls and directions made visible", () => {
    const plain = textOf(page);
    for (const name of NAMES.slice(0, 6)) expect(plain).toContain(name);
    expect(plain).toContain("a\\u202eb\\u2066c");
    expect(plain).toContain("\\u001b[31mred");
    expect(page).not.toMatch(
      /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/u,
    );
  });
  test("of strangers stay out where names are not asked for", () => {
    const hidden = { ...report, showsNames: false };
    const plain = textOf(planPage(hidden, planJson(hidden), [], sha256Base64));
    expect(plain).not.toContain('"=HYPERLINK(1)"');
    expect(textOf(page)).toContain('"=HYPERLINK(1)"');
  });
});

test("feet come first where the venue's unit is feet", () => {
  expect(page).toContain('<html lang="en" data-length="ft">');
  expect(textOf(page)).toMatch(/the furthest here is .* at [\d.]+ ft \([\d.]+ m\)/);
});
