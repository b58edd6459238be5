import { describe, expect, it } from "vitest";
import { ArgumentError } from "../../src/issues/index.js";
import { addressSwitches } from "../../src/patch/index.js";

const bits = (setting: readonly boolean[]): string => setting.map((on) => (on ? "1" : "0")).join("");

describe("addressSwitches (common practice, no source)", () => {
  // 29 = 16 + 8 + 4 + 1; 28 = 16 + 8 + 4. By hand.
  it("29 by hand", () => {
    const { fromOne, fromZero } = addressSwitches(29);
    expect([bits(fromOne!), bits(fromZero)]).toEqual(["101110000", "001110000"]);
  });
  it("the ends: 1, 256, 511 and 512", () => {
    const shown = [1, 256, 511].map((address) => bits(addressSwitches(address).fromOne!));
    expect(shown).toEqual(["100000000", "000000001", "111111111"]);
    expect(bits(addressSwitches(1).fromZero)).toBe("000000000");
    expect(bits(addressSwitches(512).fromZero)).toBe("111111111");
    expect(addressSwitches(512).fromOne).toBeNull();
  });
  it("every address is the binary number that the switches show, last switch first", () => {
    for (let address = 1; address <= 512; address++) {
      const { fromOne, fromZero } = addressSwitches(address);
      expect(bits([...fromZero].reverse())).toBe((address - 1).toString(2).padStart(9, "0"));
      if (address < 512) expect(bits([...fromOne!].reverse())).toBe(address.toString(2).padStart(9, "0"));
    }
  });
  it.each([0, 513, 1.5, NaN, -1])("throws for %d", (address) => {
    expect(() => addressSwitches(address)).toThrow(ArgumentError);
  });
});
