/** Long work can be ended and tells how far it is; what goes in and comes out can be posted to a worker. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";
import { describe, expect, test, vi } from "vitest";
import {
  allocateAddresses,
  ArgumentError,
  assignChannels,
  buildSurvey,
  fewestUniverses,
  findProfile,
  fitPathLoss,
  marginField,
  planChannel,
  planHang,
  planPatch,
  planPlacement,
  planVenueChannels,
  planVenueLinks,
  rankChannels,
  readScan,
  readVenue,
  receiverBudgets,
  regulationReview,
  secondSystemCost,
  throwIfAborted,
  toEmitters,
  venueRequest,
  venueSite,
} from "../src/index.js";
import type { LongWork, ScanInput, WorkProgress } from "../src/index.js";
import { sampleVenue } from "./venue/file/sample-venue.js";
import { PROJECT } from "./tools/core-program.js";

const scanPath = join(PROJECT, "fixtures/scans/ropewalk-full.csv");
const bytes = new Uint8Array(readFileSync(scanPath));
const sweepBytes = new Uint8Array(readFileSync(join(PROJECT, "fixtures/scans/ropewalk-full-sweep.csv")));
const scan = await readScan(bytes, { source: "full.csv" });
const sweep = await readScan(sweepBytes, { source: "sweep.csv", place: "hall front", crowd: "full" });
const survey = buildSurvey([scan, sweep]);
const profile = findProfile("raster-13");
const read = readVenue(sampleVenue(), { source: "venue.yaml" });
const venue = read.venue!;
const site = venueSite(venue);
const [system] = venue.systems;
const heard = { survey: new Map() };
const emitters = toEmitters(survey);

/** Systems that are all strongly coupled: nothing is proved for minutes. */
const systemCount = 30;
const problem = {
  wantedDbm: Array.from({ length: systemCount }, (_, index) => -55 - (index % 7)),
  requiredCiDb: Array.from({ length: systemCount }, () => 14),
  overlap: Array.from({ length: 13 }, (_, apart) => 10 ** -apart),
  baseMw: Array.from({ length: systemCount }, (_, r) =>
    Array.from({ length: 13 }, (_, c) => 1e-9 * (1 + ((r * 7 + c * 5) % 11))),
  ),
  couplingMw: Array.from({ length: systemCount }, (_, r) =>
    Array.from({ length: systemCount }, (_, t) => (r === t ? 0 : 1e-7 * (1 + ((r * 13 + t * 29) % 17)))),
  ),
};

const results: Readonly<Record<string, () => unknown>> = {
  readScan: () => scan,
  "readScan of a sweep": () => sweep,
  buildSurvey: () => survey,
  toEmitters: () => emitters,
  profile: () => profile,
  rankChannels: () => rankChannels({ emitters, profile, wantedDbm: -60 }),
  planChannel: () => planChannel({ emitters, sweeps: survey.sweepLevels, profile }),
  "planChannel, hopping": () => planChannel({ emitters, profile: findProfile("hop-79-avoid") }),
  assignChannels: () => assignChannels(problem, { nodeLimitCount: 500 }),
  readVenue: () => read,
  planVenueChannels: () => planVenueChannels(site, heard),
  planVenueLinks: () => planVenueLinks(site, heard),
  receiverBudgets: () => receiverBudgets(site, system!, system!.transmitter!, heard),
  planPlacement: () => planPlacement(site, system!, heard),
  secondSystemCost: () => secondSystemCost(site, planPlacement(site, system!, heard), heard),
  marginField: () =>
    marginField(site, system!, { ...heard, room: "hall", stepM: 1, heightM: 3, antenna: null }),
  venueRequest: () =>
    venueRequest(site, {
      ...heard,
      systems: [{ system: system!, transmitter: system!.transmitter!, channel: 6 }],
      buildingIds: new Set(),
    }),
  planPatch: () => planPatch(venue),
  planHang: () => planHang(venue),
  allocateAddresses: () => allocateAddresses({ luminaires: venue.luminaires, systems: venue.systems }),
  fewestUniverses: () => fewestUniverses({ footprintSlotCount: [300, 300, 212] }),
  fitPathLoss: () => fitPathLoss({ distanceM: [1, 2, 4, 8, 12, 16], lossDb: [40, 46, 53, 58, 63, 64] }),
  regulationReview: () => regulationReview(profile, "EU"),
};

describe("what comes out can be posted: the clone is the same", () => {
  test.each(Object.entries(results))("%s", (_name, result) => {
    const value = result();
    expect(value).toBeTypeOf("object");
    expect(structuredClone(value)).toEqual(value);
  });
  test("and works in place of the original", () => {
    const clone = structuredClone({ emitters, profile });
    expect(planChannel(clone)).toEqual(planChannel({ emitters, profile }));
    const house = venueSite(structuredClone(venue));
    expect(planVenueLinks(house, heard)).toEqual(planVenueLinks(site, heard));
  });
  test("but a venue made ready holds its tables: the venue is posted, the site is made there", () => {
    expect(() => structuredClone(site)).toThrow(/could not be cloned/);
  });
});

/** Long work, each with options to end it. */
const work: Readonly<Record<string, (options: LongWork) => unknown>> = {
  readScan: (options) => readScan(bytes, { source: "a", ...options }),
  "readScan of a sweep": (options) => readScan(sweepBytes, { source: "a", ...options }),
  "readScan of text": (options) =>
    readScan("ssid,channel,signal_dbm\nx,6,-60\n", { source: "a", ...options }),
  rankChannels: (options) => rankChannels({ emitters, profile, wantedDbm: -60, ...options }),
  planChannel: (options) => planChannel({ emitters, profile, ...options }),
  assignChannels: (options) => assignChannels(problem, { nodeLimitCount: 500, ...options }),
  planVenueChannels: (options) => planVenueChannels(site, { ...heard, ...options }),
  planVenueLinks: (options) => planVenueLinks(site, { ...heard, ...options }),
  planPlacement: (options) => planPlacement(site, system!, { ...heard, ...options }),
  marginField: (options) =>
    marginField(site, system!, { ...heard, room: "hall", stepM: 0.1, heightM: 3, antenna: null, ...options }),
};

describe.each(Object.entries(work))("%s", (_name, start) => {
  test("throws the signal's reason when it is aborted", async () => {
    const reason = new Error("the user went home");
    await expect((async () => await start({ signal: AbortSignal.abort(reason) }))()).rejects.toBe(reason);
  });
  test("can be ended on the way, and tells how far it is", async () => {
    const told: WorkProgress[] = [];
    await start({ onProgress: (progress) => told.push(progress) });
    expect(told.length).toBeGreaterThan(0);
    for (const part of new Set(told.map((one) => one.part))) {
      const counts = told.filter((one) => one.part === part).map(({ doneCount }) => doneCount);
      expect(counts.every((count) => Number.isInteger(count) && count >= 0)).toBe(true);
    }
    for (const { doneCount, totalCount } of told)
      expect(doneCount).toBeLessThanOrEqual(totalCount ?? Infinity);
    const stop = new AbortController();
    const onProgress = (): void => stop.abort("enough");
    const ended = await (async () => await start({ signal: stop.signal, onProgress }))().catch(
      (error: unknown) => error,
    );
    // Where the only news is the last, the work is done by then.
    if (told.length > 1) expect(ended).toBe("enough");
    else expect(stop.signal.aborted).toBe(true);
  });
  test("gives the same with a signal that is never aborted", async () => {
    const never = { signal: new AbortController().signal };
    expect(await start(never)).toEqual(await start({}));
  });
});

describe("a search that would go on for minutes", () => {
  test("ends when a clock says so, with the reason", () => {
    const endMs = performance.now() + 50;
    const signal = {
      get aborted() {
        return performance.now() > endMs;
      },
      reason: "too long",
    };
    expect(() => assignChannels(problem, { nodeLimitCount: Infinity, signal })).toThrow("too long");
    expect(performance.now() - endMs).toBeLessThan(2_000);
  });
  test("for addresses ends too", () => {
    // 3-partition with sizes between a quarter and a half of a universe: hard to prove.
    const footprintSlotCount = Array.from({ length: 120 }, (_, index) => 129 + ((index * 37) % 127));
    const asked = vi.fn(() => asked.mock.calls.length > 3);
    const signal = {
      get aborted() {
        return asked();
      },
    };
    const terms = { footprintSlotCount, mostStepCount: 1_000_000, signal };
    expect(() => fewestUniverses(terms)).toThrow(expect.objectContaining({ name: "AbortError" }));
  });
  test("in a worker ends through shared memory", async () => {
    const door = pathToFileURL(join(PROJECT, "dist/venue/index.js")).href;
    const flag = new Int32Array(new SharedArrayBuffer(4));
    const code = `
      const { parentPort, workerData: { problem, flag } } = require("node:worker_threads");
      import(${JSON.stringify(door)}).then(({ assignChannels }) => {
        const signal = { get aborted() { return Atomics.load(flag, 0) === 1; }, reason: "told to" };
        const onProgress = ({ doneCount }) => { if (doneCount === 50) parentPort.postMessage("at it"); };
        try {
          parentPort.postMessage(assignChannels(problem, { nodeLimitCount: Infinity, signal, onProgress }));
        } catch (error) {
          parentPort.postMessage({ ended: error });
        }
      });`;
    const worker = new Worker(code, { eval: true, workerData: { problem, flag } });
    const said: unknown[] = [];
    await new Promise<void>((done, fail) => {
      worker.on("message", (message) => {
        said.push(message);
        if (message === "at it") Atomics.store(flag, 0, 1);
        else done();
      });
      worker.on("error", fail);
    });
    await worker.terminate();
    expect(said).toEqual(["at it", { ended: "told to" }]);
  });
});

describe("readScan takes", () => {
  const whole = scan;
  const chunked = function* (size: number): Generator<Uint8Array> {
    for (let start = 0; start < bytes.length; start += size) yield bytes.subarray(start, start + size);
  };
  const streamOf = (size: number): ReadableStream<Uint8Array> => {
    const chunks = chunked(size);
    return new ReadableStream({
      pull(controller) {
        const next = chunks.next();
        if (next.done === true) controller.close();
        else controller.enqueue(next.value);
      },
    });
  };
  /** What a browser has whose streams can't be iterated over. */
  const bare = (stream: ReadableStream<Uint8Array>) => ({ getReader: () => stream.getReader() });
  const inputs: Readonly<Record<string, () => ScanInput>> = {
    "a Web stream": () => streamOf(1000),
    "a Web stream that can't be iterated over": () => bare(streamOf(777)),
    "an iterable": () => chunked(333),
    "an async iterable": async function* () {
      for (const chunk of chunked(4096)) yield await Promise.resolve(chunk);
    },
    "a blob's stream": () => new Blob([bytes]).stream(),
  };
  test.each(Object.entries(inputs))("%s: as the bytes in one piece", async (_name, input) => {
    expect(await readScan(input(), { source: "full.csv" })).toEqual(whole);
    const told: number[] = [];
    const options = {
      source: "full.csv",
      onProgress: ({ doneCount }: WorkProgress) => void told.push(doneCount),
    };
    expect(await readScan(input(), options)).toEqual(whole);
    expect(told.at(-1)).toBe(bytes.length);
    expect(told).toEqual([...told].sort((a, b) => a - b));
  });
  test.each(["iterated", "bare"])("a stream (%s) that fails: its own error", async (kind) => {
    const broken = new ReadableStream<Uint8Array>({
      pull(controller) {
        controller.error(new Error("the disk is gone"));
      },
    });
    const input = kind === "bare" ? bare(broken) : broken;
    await expect(readScan(input, { source: "x" })).rejects.toThrow("the disk is gone");
  });
  test.each(["iterated", "bare"])("a stream (%s) that is aborted: it is cancelled", async (kind) => {
    const cancel = vi.fn();
    const stop = new AbortController();
    const endless = new ReadableStream<Uint8Array>({
      pull: (controller) => controller.enqueue(bytes.subarray(0, 500)),
      cancel,
    });
    const input = kind === "bare" ? bare(endless) : endless;
    const onProgress = ({ doneCount }: WorkProgress): void =>
      void (doneCount > 200_000 && stop.abort("stop"));
    await expect(readScan(input, { source: "x", signal: stop.signal, onProgress })).rejects.toBe("stop");
    expect(cancel).toHaveBeenCalledOnce();
  });
  test("nothing else, watched or not", async () => {
    for (const options of [{ source: "x" }, { source: "x", onProgress: () => undefined }])
      await expect(readScan(5 as never, options)).rejects.toThrow(ArgumentError);
  });
});

test("an abort without a reason is an AbortError, as the platform calls it", () => {
  expect(() => throwIfAborted({ aborted: true })).toThrow(expect.objectContaining({ name: "AbortError" }));
  expect(() => throwIfAborted(AbortSignal.abort())).toThrow(expect.objectContaining({ name: "AbortError" }));
  expect(throwIfAborted(new AbortController().signal)).toBeUndefined();
});
