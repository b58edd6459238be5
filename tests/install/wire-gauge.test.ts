import { describe, expect, test } from "vitest";
import {
  ArgumentError,
  AWG_CORDS,
  awgAreaMm2,
  awgDiameterMm,
  copperResistanceOhmPerM,
  cordAmpacity,
  MM2_CORDS,
} from "../../src/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";

const rows = referenceCsv("awg.csv");
const figures = (quantity: string): (readonly [awg: number, value: number, places: number])[] =>
  rows
    .filter((row) => row["quantity"] === quantity)
    .map(({ awg, value }) => [Number(awg), Number(value), value!.split(".")[1]?.length ?? 0]);

describe("gauges", () => {
  test("have the diameters and areas of ASTM B258, to the digits printed", () => {
    expect(figures("diameter")).toHaveLength(9);
    for (const [awg, valueMm, places] of figures("diameter"))
      expect(awgDiameterMm(awg).toFixed(places)).toBe(valueMm.toFixed(places));
    for (const [awg, valueMm2, places] of figures("area"))
      expect(awgAreaMm2(awg).toFixed(places)).toBe(valueMm2.toFixed(places));
  });
  test("run from 0.005 in at No. 36 to 0.46 in at No. 4/0, the two ends that define them", () => {
    expect(awgDiameterMm(36) / 25.4).toBeCloseTo(0.005, 12);
    expect(awgDiameterMm(-3) / 25.4).toBeCloseTo(0.46, 12);
  });
  test("have the resistances of IEC 60028 at 20 °C and 75 °C, to the digits printed", () => {
    for (const [quantity, temperatureC] of [
      ["r20", 20],
      ["r75", 75],
    ] as const)
      for (const [awg, ohmPerKm] of figures(quantity)) {
        const ours = 1000 * copperResistanceOhmPerM(awgAreaMm2(awg), temperatureC);
        // The table took 1/58 as 0.017241, 2.2e-5 low, and 75 °C from its rounded figure at 20 °C.
        const roundingOhm = 0.0005 + (temperatureC === 75 ? 0.0007 : 0);
        expect(Math.abs(ours * ((58 * 17.241) / 1000) - ohmPerKm)).toBeLessThan(roundingOhm);
      }
  });
  test("agree with the solid column of NEC Chapter 9 Table 8 within its rounding", () => {
    expect(figures("nec_t8_uncoated_solid")).toHaveLength(5);
    for (const [awg, ohmPerKft] of figures("nec_t8_uncoated_solid")) {
      const ours = copperResistanceOhmPerM(awgAreaMm2(awg), 75) * 304.8;
      expect(Math.abs(ours - ohmPerKft)).toBeLessThan(0.008);
    }
  });
  test("refuse what is none", () => {
    expect(() => awgDiameterMm(NaN)).toThrow(ArgumentError);
    expect(() => copperResistanceOhmPerM(0, 20)).toThrow(ArgumentError);
    expect(() => copperResistanceOhmPerM(1, Infinity)).toThrow(ArgumentError);
  });
});

describe("cords", () => {
  const published = (awg: number, quantity: string): number | null =>
    figures(quantity).find(([gauge]) => gauge === awg)?.[1] ?? null;

  test("in AWG have the stranded resistance of Table 8 and the currents of Table 400.5(A)(1)", () => {
    expect(AWG_CORDS.map(({ awg }) => awg)).toEqual([18, 16, 14, 12, 10]);
    for (const { awg, resistanceOhmPerM, twoLoadedA, threeLoadedA, areaMm2 } of AWG_CORDS) {
      expect(resistanceOhmPerM * 304.8).toBeCloseTo(published(awg!, "nec_t8_uncoated_stranded")!, 10);
      expect((1000 * resistanceOhmPerM).toFixed(3)).toBe(
        published(awg!, "nec_t8_uncoated_stranded_per_km")!.toFixed(3),
      );
      expect(twoLoadedA).toBe(published(awg!, "cord_ampacity_2_conductors"));
      expect(threeLoadedA).toBe(published(awg!, "cord_ampacity_3_conductors"));
      expect(areaMm2).toBeCloseTo(published(awg!, "area")!, 3);
    }
  });
  test("say which of their figures were recalled", () => {
    for (const row of rows.filter(({ quantity }) => quantity === "cord_ampacity_3_conductors"))
      expect(row["status"]).toBe("memory");
    expect(new Set(AWG_CORDS.map(({ threeLoadedOrigin }) => threeLoadedOrigin.status))).toEqual(
      new Set(["memory"]),
    );
    expect(new Set(MM2_CORDS.map(({ twoLoadedOrigin }) => twoLoadedOrigin.status))).toEqual(
      new Set(["memory"]),
    );
    expect(new Set(MM2_CORDS.map(({ resistanceOrigin }) => resistanceOrigin.status))).toEqual(
      new Set(["memory"]),
    );
  });
  test("in mm² lie above solid copper by IEC 60028 of that area, as IEC 60228 class 5 allows: 10 to 20 %", () => {
    for (const { areaMm2, resistanceOhmPerM } of MM2_CORDS) {
      const ratio = resistanceOhmPerM / copperResistanceOhmPerM(areaMm2, 75);
      expect([ratio > 1.1, ratio < 1.2]).toEqual([true, true]);
    }
  });
  test.each([
    ["AWG", AWG_CORDS],
    ["mm²", MM2_CORDS],
  ])("in %s come thinnest first, and a thicker one loses less and carries no less", (_, cords) => {
    for (const [index, thicker] of cords.slice(1).entries()) {
      const thinner = cords[index]!;
      expect(thicker.areaMm2).toBeGreaterThan(thinner.areaMm2);
      expect(thicker.resistanceOhmPerM).toBeLessThan(thinner.resistanceOhmPerM);
      for (const loadedCount of [2, 3] as const)
        expect(cordAmpacity(thicker, loadedCount).ampacityA).toBeGreaterThanOrEqual(
          cordAmpacity(thinner, loadedCount).ampacityA,
        );
      expect(thicker.threeLoadedA).toBeLessThanOrEqual(thicker.twoLoadedA ?? Infinity);
    }
  });
  test("10 AWG, of which no figure for two conductors was found, takes the smaller one for three", () => {
    expect(cordAmpacity(AWG_CORDS[4]!, 2)).toMatchObject({ ampacityA: 25, origin: { status: "memory" } });
  });
});
