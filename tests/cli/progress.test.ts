import { Writable } from "node:stream";
import { describe, expect, test } from "vitest";
import type { Io } from "../../src/cli/index.js";
import { progressOf, progressWords } from "../../src/cli/progress.js";

function terminal(isTTY: boolean): { io: Io; written: string[] } {
  const written: string[] = [];
  const err = Object.assign(
    new Writable({
      write: (chunk: Buffer, _encoding, done) => {
        written.push(chunk.toString("utf8"));
        done();
      },
    }),
    { isTTY },
  );
  return { io: { out: err, err, stdin: process.stdin, env: {} }, written };
}

/** Reads ten chunks, one each half second by a clock of its own. */
function reading(isTTY: boolean, options: { quiet?: boolean; json?: boolean } = {}): string[] {
  const { io, written } = terminal(isTTY);
  let now = 0;
  const progress = progressOf("log.csv", 1e8, io, options, () => now);
  for (let chunk = 0; chunk < 10; chunk++) {
    now += 500;
    progress.read(1e7);
  }
  progress.end();
  return written;
}

describe("progress", () => {
  test("bytes, rate and time left, by hand: 50 MB in 2 s leaves 50 MB at 25 MB/s", () => {
    expect(progressWords("log.csv", 5e7, 1e8, 2000)).toBe("log.csv: 50 of 100 MB, 25 MB/s, 2 s left");
    expect(progressWords("<stdin>", 2.5e6, null, 1000)).toBe("<stdin>: 2.5 MB, 2.5 MB/s");
  });

  test("starts when a second has passed, and clears its line", () => {
    const written = reading(true);
    expect(written[0]).toContain("20 of 100 MB"); // the second chunk, at 1 s
    expect(written.at(-1)).toBe("\r\u001b[K");
  });

  test.each([
    ["a pipe", false, {}],
    ["--quiet", true, { quiet: true }],
    ["--json", true, { json: true }],
  ] as const)("is silent for %s", (_, isTTY, options) => {
    expect(reading(isTTY, options)).toEqual([]);
  });

  test("says nothing of what takes less than a second", () => {
    const { io, written } = terminal(true);
    const progress = progressOf("small.csv", 100, io, {}, () => 0);
    progress.read(100);
    progress.end();
    expect(written).toEqual([]);
  });
});
