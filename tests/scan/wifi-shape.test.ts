import { describe, expect, it } from "vitest";
import { transmitShapes } from "../../src/band/index.js";
import { wifiShape } from "../../src/scan/index.js";

describe("wifiShape", () => {
  it.each([
    ["b", 20, "dsss22"],
    ["g", 20, "erpOfdm20"],
    ["a", 20, "erpOfdm20"],
    ["n", 20, "ht20"],
    ["n", 40, "ht40"],
    ["ac", 20, "ht20"],
    ["ac", 40, "ht40"],
    ["ax", 20, "he20"],
    ["ax", 40, "he40"],
    ["be", 20, "he20"],
    ["be", 40, "he40"],
    ["unknown", 20, "ht20"],
    ["unknown", 40, "ht40"],
  ] as const)("%s of %s MHz is %s", (standard, widthMhz, name) => {
    expect(wifiShape(standard, widthMhz)).toBe(transmitShapes[name]);
  });
});
