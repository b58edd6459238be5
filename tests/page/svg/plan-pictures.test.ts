/** Every picture of the demo venue: layout golden in fixtures/golden/svg (`vitest -u` writes them again), and harmless. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { planPictures, standaloneSvg } from "../../../src/page/index.js";
import type { Picture } from "../../../src/page/index.js";
import { allOf, readSvg } from "./read-svg.js";
import { PROJECT } from "../../tools/core-program.js";
import { plannedVenue } from "../planned-venue.js";

const GOLDEN = join(PROJECT, "fixtures/golden/svg");
const VENUE = join(PROJECT, "fixtures/venues/ropewalk/venue.yaml");
/** What a static picture is made of; nothing that runs, links or is fetched. */
const ELEMENTS = ["svg", "title", "desc", "defs", "clipPath", "g", "path", "circle", "rect", "text"];

let pictures: Picture[];
beforeAll(async () => {
  pictures = planPictures(await plannedVenue(VENUE));
});

test("each is as its golden file has it", async () => {
  for (const picture of pictures)
    await expect(standaloneSvg(picture)).toMatchFileSnapshot(join(GOLDEN, `${picture.name}.svg`));
});

test("there is no golden file of a picture that isn't drawn any more", () => {
  expect(readdirSync(GOLDEN).sort()).toEqual(pictures.map(({ name }) => `${name}.svg`).sort());
});

test("what a sheet asks for is there, each name once", () => {
  const names = pictures.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of names) expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  for (const name of ["rooms", "band-hall", "margin-hall", "floor-hall", "places-studio", "busy"])
    expect(names).toContain(name);
});

describe("in one page together", () => {
  test("no id comes twice, and each that is named is there", () => {
    const all = pictures.flatMap(({ svg }) => allOf(readSvg(svg)));
    const ids = all.flatMap(({ attributes }) => attributes.get("id") ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    const named = all.flatMap(({ attributes }) => [
      ...(attributes.get("aria-labelledby")?.split(" ") ?? []),
      ...[...(attributes.get("clip-path") ?? "").matchAll(/^url\(#(.*)\)$/g)].map(([, id]) => id!),
    ]);
    expect(named.length).toBeGreaterThan(2 * pictures.length - 1);
    for (const id of named) expect(ids).toContain(id);
  });
  test("there is nothing that a strict policy refuses: no style, script, link, handler", () => {
    for (const { svg } of pictures)
      for (const { name, attributes } of allOf(readSvg(svg))) {
        expect(ELEMENTS).toContain(name);
        for (const [key, value] of attributes) {
          expect(key).not.toMatch(/^(on|style|href|xlink)/);
          expect(value.replace("http://www.w3.org/2000/svg", "")).not.toMatch(/javascript:|data:|https?:/);
        }
      }
  });
  test("text keeps inside the drawing, by a narrow face's width", () => {
    for (const { name, svg } of pictures)
      for (const { name: kind, attributes, text } of allOf(readSvg(svg))) {
        if (kind !== "text") continue;
        const [x, widthPx] = [Number(attributes.get("x")), [...text].length * 15 * 0.5];
        const share = { start: 0, middle: 0.5, end: 1 }[attributes.get("text-anchor") ?? "start"]!;
        const [left, right] = [x - share * widthPx, x + (1 - share) * widthPx];
        expect(left, `${name}: ${text}`).toBeGreaterThanOrEqual(-4);
        expect(right, `${name}: ${text}`).toBeLessThanOrEqual(544);
      }
  });
  test("titles and descriptions say something, the same as the picture's own", () => {
    for (const { svg, title, description } of pictures) {
      const [first, second] = readSvg(svg).children;
      expect([first!.text, second!.text]).toEqual([title, description]);
      expect(description).toMatch(/\d/);
    }
  });
});

test("the same report gives the same bytes", async () => {
  expect(planPictures(await plannedVenue(VENUE)).map(({ svg }) => svg)).toEqual(
    pictures.map(({ svg }) => svg),
  );
});
