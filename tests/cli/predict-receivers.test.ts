/** What receivers will read: in a fitted room by the fit's own interval, else by a stated spread. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { tooWide } from "./columns.js";
import { scratch } from "./scratch.js";
import { schemaFaults } from "./schemas.js";
import { inProcess } from "./stillband.js";

const { file } = scratch();
const MODEL = "fixtures/readings/ropewalk-model.json";

const venueText = (pathModel: string): string => `name: Bench Hall
units: m
rooms:
  - { name: hall, outline: [[0, 0], [40, 0], [40, 20], [0, 20]], height: 8${pathModel} }
walls:
  - { name: screen, from: [25, 0], to: [25, 20], loss_db: 6 }
systems:
  - name: hall
    rooms: [hall]
    channel: 3
    transmitter: { name: booth, at: [2, 10], height: 4 }
receivers:
  - { name: near, system: hall, at: [12, 10], height: 4 }
  - { name: far, system: hall, at: [32, 10], height: 4 }
luminaires:
  - { name: L1, room: hall, x: 12, y: 10, trim_height: 4, receiver: near }
  - { name: L2, room: hall, x: 32, y: 10, trim_height: 4, receiver: far }
`;

interface Forecast {
  readonly receiver: string;
  readonly predictedDbm: number;
  readonly readingIntervalDbm: readonly [number, number];
  readonly predictionIntervalDb: readonly [number, number] | null;
  readonly predictionReason: string | null;
  readonly inSight: boolean;
  readonly budget: { readonly pathLossDb: number };
  readonly spread: { readonly basis: string; readonly sigmaDb: number; readonly isExtrapolated: boolean };
}

async function forecasts(text: string): Promise<(name: string) => Forecast> {
  const path = file("venue.yaml", text);
  const { code, out } = await inProcess(["link", path, "--json"]);
  expect(code).toBe(0);
  const value = JSON.parse(out) as { systems: { receivers: Forecast[] }[] };
  expect(schemaFaults("link-venue", value)).toEqual([]);
  return (name) => value.systems[0]!.receivers.find(({ receiver }) => receiver === name)!;
}

test("in a fitted room: the textbook's interval of the path loss, t·√(σ² + xᵀ·C·x), and a reading's about its level", async () => {
  file("model.json", readFileSync(MODEL, "utf8"));
  const model = JSON.parse(readFileSync(MODEL, "utf8")) as {
    readonly exponent: number;
    readonly referenceLossDb: number;
    readonly sigmaDb: number;
    readonly freedomCount: number;
    readonly covariance: readonly (readonly number[])[];
  };
  const of = await forecasts(venueText(", path_model: model.json"));
  // t at 2.5 %, 33 degrees of freedom, from a printed table: 2.0345.
  expect(model.freedomCount).toBe(33);
  for (const [name, distanceM] of [
    ["near", 10],
    ["far", 30],
  ] as const) {
    const one = of(name);
    const x = [1, 10 * Math.log10(distanceM)];
    const variance = x.reduce(
      (sum, a, i) => sum + x.reduce((inner, b, j) => inner + a * b * model.covariance[i]![j]!, 0),
      0,
    );
    const lossDb = model.referenceLossDb + 10 * model.exponent * Math.log10(distanceM);
    const half = 2.0345 * Math.sqrt(model.sigmaDb ** 2 + variance);
    expect(one.predictionIntervalDb![0]).toBeCloseTo(lossDb - half, 2);
    expect(one.predictionIntervalDb![1]).toBeCloseTo(lossDb + half, 2);
    // 18 + 2 + 2 − 10 − loss, and the screen of 6 dB before the far one.
    expect(one.predictedDbm).toBeCloseTo(12 - lossDb - (name === "far" ? 6 : 0), 6);
    expect(one.spread).toMatchObject({ basis: "fitted", isExtrapolated: false });
    const [low, high] = one.readingIntervalDbm;
    expect(high - low).toBeGreaterThan(2 * half);
  }
});

test("hidden, a reading fades further down than in sight", async () => {
  const of = await forecasts(
    venueText(", path_model: { kind: log-distance, exponent: 2, reference_loss_db: 40, sigma_db: 3 }"),
  );
  const [near, far] = [of("near"), of("far")];
  expect([near.inSight, far.inSight]).toEqual([true, false]);
  expect([near.spread.basis, near.spread.sigmaDb]).toEqual(["path-model", 3]);
  // The quadratures of tests/commissioning/reading-interval.test.ts: σ 3 dB, Rician 6 dB and Rayleigh.
  expect(near.readingIntervalDbm[0] - near.predictedDbm).toBeCloseTo(-10.487, 1);
  expect(far.readingIntervalDbm[0] - far.predictedDbm).toBeCloseTo(-16.969, 1);
  expect(near.predictionIntervalDb).toBeNull();
  expect(near.predictionReason).toMatch(/not fitted on site/);
});

test("without any figure the spread is that of ITU-R P.1238-11, office: 3.76 dB in sight, 5.04 dB not; called assumed", async () => {
  const of = await forecasts(venueText(""));
  expect(of("near").spread).toMatchObject({ basis: "assumed", sigmaDb: 3.76 });
  expect(of("far").spread).toMatchObject({ basis: "assumed", sigmaDb: 5.04 });
});

test("the text of a fitted room has the interval beside each receiver, in 80 columns; of another none", async () => {
  file("model.json", readFileSync(MODEL, "utf8"));
  const fitted = await inProcess(["link", file("fitted.yaml", venueText(", path_model: model.json"))]);
  expect(fitted.out).toMatch(/receiver +room +reads dBm +95 % of readings +path loss dB/);
  expect(fitted.out).toMatch(/^near +hall +-\d+\.\d +-\d+\.\d to -\d+\.\d +\d+\.\d to \d+\.\d/m);
  expect(tooWide(fitted.out, 80)).toEqual([]);
  const plain = await inProcess(["link", file("plain.yaml", venueText(""))]);
  expect(plain.out).not.toMatch(/95 % of readings/);
});
