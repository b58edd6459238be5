import { describe, expect, test } from "vitest";
import { element, svgNumber, textNode } from "../../../src/page/svg/element.js";
import { pictureNames } from "../../../src/page/svg/picture-names.js";
import { pictureOf } from "../../../src/page/svg/drawing.js";
import { standaloneSvg } from "../../../src/page/svg/standalone-svg.js";
import { allOf, readSvg } from "./read-svg.js";

/** What strangers may call a network or a room. */
const HOSTILE = `</title><script>alert(1)</script>" onload="x" '&amp; $& $' ]]> \u0000\u001b\u202e`;

describe("an element", () => {
  test("has one rounding, to a tenth of a unit, and never a minus before nothing", () => {
    expect([1.25, -0.04, 0.05, 3, -2.26].map(svgNumber)).toEqual(["1.3", "0", "0.1", "3", "-2.3"]);
    for (const value of [NaN, Infinity, -Infinity]) expect(() => svgNumber(value)).toThrow("finite");
  });
  test("leaves nothing of a hostile text markup", () => {
    const read = readSvg(element("text", { x: 1, class: HOSTILE }, textNode(HOSTILE)));
    expect(read.children).toEqual([]);
    const shown = HOSTILE.replace("\u0000", "\\u0000")
      .replace("\u001b", "\\u001b")
      .replace("\u202e", "\\u202e");
    expect(read.text).toBe(shown);
    expect([...read.attributes]).toEqual([
      ["x", "1"],
      ["class", shown],
    ]);
  });
});

describe("a picture", () => {
  const words = { name: "band-x", title: HOSTILE, description: `${HOSTILE} 5 dB` };
  const picture = pictureOf({ ...words, heightPx: 100.2, parts: [element("path", { d: "M0 0" })] });

  test("is an image with a title and a description that it names by their ids", () => {
    const root = readSvg(picture.svg);
    const [title, description] = root.children;
    expect(root.attributes.get("role")).toBe("img");
    expect(root.attributes.get("viewBox")).toBe("0 0 540 101");
    const named = root.attributes.get("aria-labelledby")!.split(" ");
    expect(named).toEqual([title, description].map((one) => one!.attributes.get("id")));
    expect([title!.name, description!.name]).toEqual(["title", "desc"]);
    expect(title!.text).toContain("<script>alert(1)</script>");
    expect(description!.text).toContain("5 dB");
  });
  test("stands alone with its title on a white ground, whatever the title holds", () => {
    const root = readSvg(standaloneSvg(picture).trimEnd());
    const [x, y, width, height] = root.attributes.get("viewBox")!.split(" ").map(Number);
    const ground = allOf(root).find(({ name }) => name === "rect")!.attributes;
    expect(["x", "y", "width", "height"].map((key) => Number(ground.get(key)))).toEqual([
      x,
      y,
      width,
      height,
    ]);
    expect(ground.get("fill")).toBe("#fff");
    expect(y! + height!).toBeGreaterThan(101);
    const head = allOf(root).filter(({ name }) => name === "text");
    expect(head.map(({ text }) => text).join(" ")).toContain("$& $'");
    for (const { attributes } of head) expect(Number(attributes.get("y"))).toBeLessThan(0);
  });
});

test("names are kebab case, and each comes once", () => {
  const nameOf = pictureNames();
  expect([
    nameOf("band", "Hall & Bär"),
    nameOf("band", "hall bar"),
    nameOf("band", "日本"),
    nameOf("band", ""),
  ]).toEqual(["band-hall-bar", "band-hall-bar-2", "band", "band-2"]);
});
