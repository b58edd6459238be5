import { describe, expect, it } from "vitest";
import { brickWall } from "../../src/band/index.js";
import { ArgumentError } from "../../src/issues/index.js";
import { findProfile } from "../../src/radio/index.js";
import type { RadioProfile } from "../../src/radio/index.js";
import { CCA_ENERGY_DBM, planChannel, radiated, wifiNeighbours } from "../../src/venue/index.js";
import type { Radiated } from "../../src/venue/index.js";
import { numericOverlapRatio } from "../helpers/numeric-overlap.js";
import { referenceCsv } from "../helpers/reference-csv.js";

const profile = findProfile("raster-13");
const emission = profile.emission.value;
const ours: Radiated = {
  centresMhz: [2437],
  bandwidthMhz: 1,
  eirpDbm: 20,
  airtimeRatio: 0.198,
  airtimeCapped: false,
};
const point = (wifiChannel: number, levelDbm: number, id = `ap-${wifiChannel}`) => ({
  id,
  levelDbm,
  wifiChannel,
});

// fixtures/reference/wifi_cca.csv
it("takes the published energy detection level", () => {
  const row = referenceCsv("wifi_cca.csv").find(({ quantity }) => quantity === "cca_ed_20mhz");
  expect(CCA_ENERGY_DBM).toBe(Number(row!["value"]));
});

describe("wifiNeighbours, level by reciprocity", () => {
  // Path gain = −50 − 18 = −68 dB; our 20 dBm arrive as −48 dBm, times what falls into 20 MHz (numeric integration).
  it.each([
    [6, 0],
    [8, 10],
    [1, -25],
    [11, 25],
  ])("Wi-Fi ch %s, %s MHz beside us", (wifiChannel, offsetMhz) => {
    const [found] = wifiNeighbours(ours, emission, [point(wifiChannel, -50)]);
    const ratio = numericOverlapRatio(emission, brickWall(20), offsetMhz, 2000);
    expect(found!.strongestDbm).toBeCloseTo(-48 + 10 * Math.log10(ratio), 3);
  });
  it("grows by a dB with each dB of ours, of the scan's, and of less power at the access point", () => {
    const [base] = wifiNeighbours(ours, emission, [point(6, -60)]);
    const louder = wifiNeighbours({ ...ours, eirpDbm: 21 }, emission, [point(6, -60)]);
    const nearer = wifiNeighbours(ours, emission, [point(6, -59)]);
    const weaker = wifiNeighbours(ours, emission, [point(6, -60)], 17);
    for (const [one] of [louder, nearer, weaker])
      expect(one!.strongestDbm - base!.strongestDbm).toBeCloseTo(1, 9);
  });
});

describe("wifiNeighbours, who waits", () => {
  // In-channel share is 1 to a millibel here: an access point waits where scanned + 2 dB ≥ −62 dBm.
  const narrow = brickWall(1);
  it("counts those at −62 dBm or more, the limit itself included", () => {
    const points = [-40, -63.9, -64, -64.1, -90].map((levelDbm, index) => point(6, levelDbm, `ap-${index}`));
    const [found] = wifiNeighbours(ours, narrow, points);
    expect(found).toMatchObject({
      accessPointCount: 5,
      waitingCount: 3,
      strongestId: "ap-0",
      waitRatio: 0.198,
    });
  });
  it("none on a channel that we don't reach", () => {
    const [found] = wifiNeighbours(ours, narrow, [point(1, -30)]);
    expect(found).toMatchObject({ waitingCount: 0, waitRatio: 0, airtimeRatio: 0, strongestDbm: -Infinity });
  });
  it("tells each channel that holds an access point once, rising, whatever the order", () => {
    const points = [point(11, -50), point(6, -50), point(11, -60, "b"), point(1, -50)];
    const forth = wifiNeighbours(ours, emission, points);
    expect(forth.map(({ wifiChannel }) => wifiChannel)).toEqual([1, 6, 11]);
    expect(wifiNeighbours(ours, emission, [...points].reverse())).toEqual(forth);
  });
});

describe("wifiNeighbours, hopping over 2402 … 2480 MHz", () => {
  const centresMhz = Array.from({ length: 79 }, (_, index) => 2402 + index);
  const hops = { ...ours, centresMhz };
  // Within 10 MHz of 2437: 2427 … 2447, 21 of 79; of 2412: 2402 … 2422, 21; of 2472: 2462 … 2480, 19.
  it.each([
    [6, 21],
    [1, 21],
    [13, 19],
  ])("Wi-Fi ch %s: %s of 79 hops fall inside", (wifiChannel, count) => {
    const [found] = wifiNeighbours(hops, brickWall(1), [point(wifiChannel, -40)]);
    expect(found!.airtimeRatio).toBeCloseTo((0.198 * count) / 79, 12);
  });
  it("an access point waits on the hops that reach −62 dBm alone", () => {
    // 1 MHz brick: inside at full power, at the edge ±10 MHz half (−3 dB), beyond nothing. −63 + 2 = −61; −64 at the edge.
    const [found] = wifiNeighbours(hops, brickWall(1), [point(6, -63)]);
    expect(found!.waitRatio).toBeCloseTo((0.198 * 19) / 79, 12);
  });
});

it("refuses a level or a power that is no number", () => {
  expect(() => wifiNeighbours(ours, emission, [point(6, NaN)])).toThrow(ArgumentError);
  expect(() => wifiNeighbours(ours, emission, [point(6, -50)], Infinity)).toThrow(ArgumentError);
});

describe("radiated", () => {
  const withFigures = (figures: Partial<Record<keyof RadioProfile, number>>): RadioProfile => ({
    ...profile,
    ...(Object.fromEntries(
      Object.entries(figures).map(([key, value]) => [key, { value, status: "yours", source: "test" }]),
    ) as Partial<RadioProfile>),
  });
  const of = (radio: RadioProfile): Radiated => radiated(planChannel({ emitters: [], profile: radio }))!;

  it("EIRP 18 − 0 + 2 dBm; on the air 4.5 ms × 44 a second", () => {
    expect(of(profile)).toEqual({
      centresMhz: [2412],
      bandwidthMhz: 1,
      eirpDbm: 20,
      airtimeRatio: expect.closeTo(0.198, 12) as number,
      airtimeCapped: false,
    });
  });
  it("counts feeder, antenna, repeats and universes", () => {
    const radio = withFigures({ txFeederLossDb: 1.5, txGainDbi: 5, transmissionsPerFrameCount: 2 });
    expect(of(radio).eirpDbm).toBeCloseTo(21.5, 12);
    expect(of(radio).airtimeRatio).toBeCloseTo(0.396, 12);
    expect(of(withFigures({ universesPerTransmitterCount: 2 })).airtimeRatio).toBeCloseTo(0.396, 12);
  });
  it("more than all of the time is capped and flagged: 6 × 4.5 ms × 44 = 1.188", () => {
    expect(of(withFigures({ transmissionsPerFrameCount: 6 }))).toMatchObject({
      airtimeRatio: 1,
      airtimeCapped: true,
    });
  });
  it("a hop set's frequencies, rising", () => {
    const { centresMhz } = of(findProfile("hop-79"));
    expect(centresMhz).toEqual(Array.from({ length: 79 }, (_, index) => 2402 + index));
  });
});
