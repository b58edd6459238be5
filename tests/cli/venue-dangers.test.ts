/** What a venue's commands must not do or leave unsaid: eat their input, hide a refusal, an emergency light. */
import { readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { scratch } from "./scratch.js";
import { firstBlock, inProcess } from "./stillband.js";

const DEMO = "fixtures/venues/ropewalk/venue.yaml";
const { folder, file } = scratch();
const TEXT = `name: Mill
units: m
rooms: [{ name: loft, outline: [[0, 0], [10, 0], [10, 10], [0, 10]], height: 6 }]
systems: [{ name: loft, rooms: [loft], transmitter: { name: door, at: [1, 1], height: 4 } }]
luminaires:
  - { name: L1, room: loft, x: 5, y: 5, trim_height: 4, emergency: yes }
  - { name: L2, room: loft, x: 7, y: 5, trim_height: 4, emergency: unknown }
  - { name: L3, room: loft, x: 8, y: 8, trim_height: 4, emergency: no }
`;
const mill = file("mill.yaml", TEXT);
const alias = join(folder, "alias.yaml");
symlinkSync(mill, alias);

describe("a file that was read is never written over", () => {
  test.each(["link", "rooms", "place"])("%s", async (command) => {
    for (const target of [mill, alias]) {
      const { code, err } = await inProcess([command, mill, "-o", target]);
      expect(code).toBe(73);
      expect(err).toMatch(/was read for this/);
      expect(readFileSync(mill, "utf8")).toBe(TEXT);
    }
  });

  test("nor a table that the venue file names; another file is", async () => {
    file("table.csv", "name,room,x,y,trim_height\nL1,loft,5,5,4\n");
    const tabled = file("tabled.yaml", TEXT.replace(/luminaires:[^]*/, "luminaires: table.csv\n"));
    expect((await inProcess(["link", tabled, "-o", join(folder, "table.csv")])).code).toBe(73);
    expect((await inProcess(["link", tabled, "-o", join(folder, "report.txt")])).code).toBe(0);
    expect((await inProcess(["rooms", tabled, "-o", join(folder, "report.txt")])).code).toBe(0);
  });
});

test.each(["link", "rooms", "place"])("%s names who counts as emergency lighting", async (command) => {
  const { out } = await inProcess([command, mill]);
  expect(out).toMatch(/COUNT as emergency or exit lighting[^.]*: L1\./);
  expect(out.replace(/\s+/g, " ")).toMatch(/NOT KNOWN whether emergency or exit lighting: L2\. Ask first\./);
});

test("rooms: where every system fails, the opening block still says not to sell it", async () => {
  const block = firstBlock((await inProcess(["rooms", DEMO, "--region", "EU"])).out);
  expect(block.length).toBeLessThanOrEqual(8);
  expect(block.join("\n")).toMatch(/else do not sell 3 systems as wireless/);
});

test("link: a mend that does not bring the weakest above 0 dB is not passed off as one", async () => {
  const block = firstBlock((await inProcess(["link", DEMO, "--region", "EU"])).out);
  expect(block.join("\n")).toMatch(/hall: second transmitter at stage header \+\d+ dB, still fails/);
});

test("a file that is no YAML: the first faults, and how many more", async () => {
  const { code, err } = await inProcess(["rooms", file("prose.yaml", "a: b: c\n".repeat(20))]);
  expect(code).toBe(65);
  expect(err.match(/not YAML or JSON/g)).toHaveLength(5);
  expect(err).toMatch(/and \d+ more; --json lists all/);
});
