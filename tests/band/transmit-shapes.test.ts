import { describe, expect, it } from "vitest";
import { transmitShapes } from "../../src/band/index.js";
import type { Shape } from "../../src/band/index.js";
import { levelAt } from "../helpers/numeric-overlap.js";
import { referenceCsv } from "../helpers/reference-csv.js";

const WIFI = referenceCsv("masks.csv").filter(({ system }) => system === "802.11");

function shapeOf({ phy, width_mhz }: Record<string, string>): Shape {
  if (phy === "DSSS") return transmitShapes.dsss22;
  if (phy === "ERP-OFDM") return transmitShapes.erpOfdm20;
  const [ht, he] =
    width_mhz === "40"
      ? [transmitShapes.ht40, transmitShapes.he40]
      : [transmitShapes.ht20, transmitShapes.he20];
  return phy === "HT" ? ht : he;
}

/** Just inside a stretch, where a step has not happened yet. */
const INSIDE_MHZ = 1e-9;

describe("transmit shapes of Wi-Fi", () => {
  it("finds all masks of the table", () => {
    expect(WIFI.length).toBe(28);
  });

  // masks.csv: IEEE 802.11-2020 cl. 15.4.5.5, 16.3.7.4, 17.3.9.3, 19.3.18.1; 802.11ax-2021 cl. 27.3.19.1.
  // 1e-6 dB: the point lies 1e-9 MHz inside its stretch, the steepest line is 40 dB/MHz.
  it.each(
    WIFI.map((row) => [`${row["phy"]} ${row["width_mhz"]} from ${row["offset_from_mhz"]} MHz`, row] as const),
  )("%s is the mask's own limit on both sides", (_, row) => {
    const shape = shapeOf(row);
    const fromMhz = Number(row["offset_from_mhz"]);
    const toMhz = row["offset_to_mhz"] === "" ? 100 : Number(row["offset_to_mhz"]);
    for (const side of [1, -1]) {
      expect(levelAt(shape, side * (fromMhz + INSIDE_MHZ))).toBeCloseTo(Number(row["level_from"]), 6);
      expect(levelAt(shape, side * (toMhz - INSIDE_MHZ))).toBeCloseTo(Number(row["level_to"]), 6);
      const middleDbr = (Number(row["level_from"]) + Number(row["level_to"])) / 2;
      expect(levelAt(shape, (side * (fromMhz + toMhz)) / 2)).toBeCloseTo(middleDbr, 6);
    }
  });
});

describe("transmit shapes of narrow systems", () => {
  // masks.csv: IEEE 802.15.4-2020, −20 dBr beyond 3.5 MHz (memory).
  it("holds O-QPSK 20 dB down beyond 3.5 MHz", () => {
    expect(levelAt(transmitShapes.oQpsk2450, 0)).toBe(0);
    expect(levelAt(transmitShapes.oQpsk2450, 3.5)).toBeCloseTo(-20, 9);
    expect(levelAt(transmitShapes.oQpsk2450, 99)).toBeCloseTo(-20, 9);
  });

  // masks.csv, at 0 dBm: −20 dBm at an offset of 2 MHz; at 3 MHz −40 dBm (BR, memory), −30 dBm (LE 1M, read).
  it.each([
    ["bluetoothBr", -40],
    ["bluetoothLe1m", -30],
  ] as const)("keeps %s at its limits 2 and 3 MHz away", (name, limitDbm) => {
    for (const side of [1, -1]) {
      expect(levelAt(transmitShapes[name], side * 2)).toBe(-20);
      expect(levelAt(transmitShapes[name], side * 3)).toBe(limitDbm);
    }
  });
});

describe("every transmit shape", () => {
  it.each(Object.entries(transmitShapes))(
    "%s: 0 dBr in the middle, never rising outwards, ends at ±100 MHz",
    (_, { points }) => {
      const mirror = points.map(([mhz, dbr]) => [-mhz, dbr]).reverse();
      expect(mirror).toEqual(points);
      expect(points[points.length - 1]![0]).toBe(100);
      const right = points.filter(([mhz]) => mhz > 0).map(([, dbr]) => dbr);
      expect(right[0]).toBe(0);
      expect([...right].sort((a, b) => b - a)).toEqual(right);
    },
  );
});
