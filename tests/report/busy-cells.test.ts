import { describe, expect, test } from "vitest";
import { busyCells, quietestStretch, stretchesWhere } from "../../src/report/busy-cells.js";
import type { BusyCell } from "../../src/report/busy-cells.js";

const modelled = (busy: readonly number[]) =>
  busy.map((busyRatio, index) => ({ fromMhz: 2400 + index, toMhz: 2401 + index, levelDbm: -90, busyRatio }));
const swept = (busyRatio: number, levelDbm = -80) => ({ busyRatio, levelDbm });

describe("beacon lists and sweeps in one", () => {
  test("the busier speaks, the louder counts; equal shares are the beacons'", () => {
    const cells = busyCells(modelled([0.2, 0.2, 0.2]), true, [swept(0.1), swept(0.2), swept(0.3, -95)]);
    expect(cells.map(({ busyRatio, spokenBy, levelDbm }) => [busyRatio, spokenBy, levelDbm])).toEqual([
      [0.2, "beacons", -80],
      [0.2, "beacons", -80],
      [0.3, "sweep", -90],
    ]);
  });
  test("without a beacon list its silence means nothing", () => {
    const cells = busyCells(modelled([0, 0]), false, [swept(0), null]);
    expect(cells.map(({ busyRatio, spokenBy, levelDbm }) => [busyRatio, spokenBy, levelDbm])).toEqual([
      [0, "sweep", -80],
      [null, null, null],
    ]);
    expect(stretchesWhere(cells, ({ spokenBy }) => spokenBy === null)).toEqual(["2401–2402 MHz"]);
  });
});

describe("the quietest 5 MHz", () => {
  const cells = (busy: readonly (number | null)[], levels: readonly number[] = []): BusyCell[] =>
    busyCells(
      modelled(busy.map(() => 0)),
      false,
      busy.map((ratio, index) => (ratio === null ? null : swept(ratio, levels[index] ?? -80))),
    );
  test("is judged by its busiest MHz, within the radio's channels", () => {
    const busy = [0, 0, 0, 0, 0, 0.4, 0.1, 0.1, 0.1, 0.2, 0.1, 0.1];
    expect(quietestStretch(cells(busy), [2405, 2412])).toEqual({
      fromMhz: 2406,
      toMhz: 2411,
      busyRatio: 0.2,
    });
  });
  test("of equals is the one with the lowest level, then the lowest", () => {
    const levels = [-70, -80, -80, -80, -80, -80, -80];
    const quiet = quietestStretch(cells([0, 0, 0, 0, 0, 0, 0], levels), [2400, 2407]);
    expect(quiet).toEqual({ fromMhz: 2401, toMhz: 2406, busyRatio: 0 });
  });
  test("is never one that was not scanned", () => {
    expect(quietestStretch(cells([null, 0.3, 0.3, 0.3, 0.3, 0.3]), [2400, 2406])).toMatchObject({
      fromMhz: 2401,
    });
    expect(quietestStretch(cells([null, 0, 0, 0, 0]), [2400, 2405])).toBeNull();
    expect(quietestStretch([], [2400, 2405])).toBeNull();
  });
});
