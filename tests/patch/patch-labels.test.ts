import { describe, expect, it } from "vitest";
import { allocateAddresses, patchLabels } from "../../src/patch/index.js";

describe("patchLabels", () => {
  const luminaires = [
    { name: "A1", room: "loft", footprintSlotCount: 28, mode: "wide", receiver: "R1" },
    { name: "A2", room: "loft", footprintSlotCount: 8 },
    { name: "A3", room: "loft", footprintSlotCount: null },
  ];
  const { rows } = allocateAddresses({ luminaires, systems: [{ name: "loft", universe: 3 }] });
  const channel = { channel: 6, centreMhz: 2437 };
  const fallback = { channel: 11, centreMhz: 2462 };
  const labels = patchLabels(rows, [{ system: "loft", channel, fallback }]);

  it("say where a luminaire listens and how it is set", () => {
    expect(labels[1]).toMatchObject({
      ...{ name: "A2", room: "loft", system: "loft", universe: 3, address: 29, lastSlot: 36 },
      ...{ footprintSlotCount: 8, mode: null, receiver: null, channel, fallback },
    });
    // 29 = 1 + 4 + 8 + 16, by hand
    expect(labels[1]!.switches!.fromOne).toEqual([true, false, true, true, true, false, false, false, false]);
    expect(labels[0]).toMatchObject({ mode: "wide", receiver: "R1", address: 1 });
  });
  it("say nothing of an address or a channel that there isn't", () => {
    expect(labels[2]).toMatchObject({ address: null, lastSlot: null, switches: null, channel });
    expect(patchLabels(rows, [])[1]).toMatchObject({ channel: null, fallback: null, address: 29 });
  });
});
