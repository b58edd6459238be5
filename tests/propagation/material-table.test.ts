import { expect, test } from "vitest";
import { findMaterial, materialPermittivity, materials } from "../../src/propagation/index.js";
import { referenceCsv } from "../helpers/reference-csv.js";

const published = referenceCsv("p2040.csv").filter(
  ({ edition }) => edition === "P.2040-3" || edition === "P.2040-4",
);

test("each row of ITU-R P.2040-3 Table 3, and the undisputed ones of -4, stands in the table with its range", () => {
  const names = new Set<string>();
  for (const row of published) {
    const material = findMaterial(row["material"]!);
    names.add(material.name);
    const { a, b, c, d } = material.coefficients.value;
    expect([a, b, c, d]).toEqual(["a", "b", "c", "d"].map((name) => Number(row[name])));
    expect(material.rangeMhz).toEqual([Number(row["f_low_ghz"]) * 1000, Number(row["f_high_ghz"]) * 1000]);
    expect(material.edition).toBe(`ITU-R ${row["edition"]}`);
  }
  // Air apart, nothing else is in it.
  expect([...names, "air"].sort()).toEqual(Object.keys(materials).sort());
});
test("permittivity and conductivity at 2450 MHz as the table prints them, five digits", () => {
  for (const row of published) {
    const { re, im } = materialPermittivity(row["material"]!, 2450);
    expect(re / Number(row["eps_r_2450"])).toBeCloseTo(1, 10);
    const conductivity = (-im * 2.45) / 17.9751;
    expect(conductivity / Number(row["sigma_s_per_m_2450"])).toBeCloseTo(1, 4);
  }
});
test("a conductivity of 1 S/m at 1 GHz: the 17.98 that ITU-R P.2040 prints; μ₀c²/(2π·1 GHz) by another route", () => {
  const loss = -materialPermittivity({ a: 1, b: 0, c: 1, d: 0 }, 1000).im;
  expect(Math.abs(loss - 17.98)).toBeLessThan(0.00501);
  // 1/ε₀ = μ₀·c², μ₀ = 1.25663706212e-6 N/A² (CODATA 2018).
  expect(loss / ((1.25663706212e-6 * 299_792_458 ** 2) / (2 * Math.PI * 1e9))).toBeCloseTo(1, 9);
});
test("names: case, spaces, hyphens and underscores alike; every material has a source and only metal is opaque", () => {
  for (const name of ["ceiling board", "Ceiling_Board", " ceiling-board ", "ceiling  _board"])
    expect(findMaterial(name)).toBe(materials["ceiling-board"]);
  for (const [name, material] of Object.entries(materials)) {
    expect(material.name).toBe(name);
    expect(material.coefficients.source).toContain("P.2040");
    expect(material.coefficients.status).toBe("standard");
    expect(material.opaque).toBe(name === "metal");
  }
  expect(findMaterial({ a: 3, b: 0, c: 0, d: 0 }).coefficients.status).toBe("yours");
});
test("what is no material is refused: a word near no other without a suggestion, and what is no word", () => {
  const message = (given: unknown): string => {
    try {
      findMaterial(given as string);
    } catch (error) {
      return String(error);
    }
    return "";
  };
  expect(message("unobtainium")).toMatch(/material: expected one of/);
  expect(message("unobtainium")).not.toContain("did you mean");
  for (const given of [5, null, undefined]) expect(message(given)).toMatch(/material: expected a name/);
});
test("coefficients that no material has are refused: a permittivity below 1, more than 10^12 of either part", () => {
  for (const given of [
    { a: 0.9, b: 0, c: 0, d: 0 },
    { a: 2e12, b: 0, c: 0, d: 0 },
    { a: 2, b: 0, c: 1e15, d: 0 },
  ])
    expect(() => materialPermittivity(given, 2450)).toThrow(
      /material: expected a relative permittivity from 1/,
    );
});
