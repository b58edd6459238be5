/** Files that are no scan, or hardly one: said in few words, without reading them to the end. */
import { describe, expect, test } from "vitest";
import { seededRandom } from "../../src/numeric/index.js";
import { accounts, read } from "./dialects.js";

const HEADER = "bssid,ssid,channel,signal_dbm\n";

function endless(chunk: Uint8Array): { chunks: Iterable<Uint8Array>; givenCount: () => number } {
  let count = 0;
  function* forever(): Generator<Uint8Array> {
    for (;;) {
      if (count++ > 1_000) throw new Error("read on and on");
      yield chunk;
    }
  }
  return { chunks: forever(), givenCount: () => count };
}

describe("an endless file that can't be a scan is given up at its start", () => {
  const random = seededRandom(7);
  const noise = Uint8Array.from({ length: 65_536 }, () => Math.floor(random() * 256));
  test.each([
    ["zeros", new Uint8Array(65_536), "binary data"],
    ["bytes of no text", noise, "binary data"],
    ["line ends", new Uint8Array(65_536).fill(0x0a), "only blank lines"],
    ["blanks", new Uint8Array(65_536).fill(0x20), "only blank lines"],
  ])("%s", async (_, chunk, found) => {
    const { chunks, givenCount } = endless(chunk);
    const result = await read(chunks);
    expect(result).toMatchObject({ format: "unknown", rowCount: 0 });
    expect(result.issues).toMatchObject([{ code: "no-usable-row", severity: "error", value: found }]);
    expect(givenCount()).toBeLessThan(40);
  });
  test("one line of cells", async () => {
    const { chunks } = endless(new TextEncoder().encode("a,b;".repeat(16_384)));
    const result = await read(chunks);
    expect(result.issues.map(({ code }) => code)).toContain("limit");
    expect(JSON.stringify(result.issues).length).toBeLessThan(5_000);
  });
});

test("a hundred thousand columns are refused in few words", async () => {
  const wide = Array.from({ length: 100_000 }, (_, index) => `x${index}`).join(",");
  const result = await read(`${HEADER.trim()},${wide}\n`);
  expect(result.issues).toMatchObject([{ code: "limit", value: "100004" }, { code: "no-usable-row" }]);
  expect(result.issues[1]!.value).toMatch(/^the headers bssid, ssid, .* and 99974 more$/);
});

test("a name of zero bytes makes a table no binary file", async () => {
  const rows = Array.from(
    { length: 30 },
    (_, index) => `02:00:00:00:00:${10 + index},${"\0".repeat(32)},6,-60\n`,
  );
  expect(await read(HEADER + rows.join(""))).toMatchObject({ rowCount: 30, rejectedCount: 0 });
});

test("a long value is cut in an issue", async () => {
  const result = await read(`${HEADER}02:00:00:00:00:01,Oak,6,-60\n${"z".repeat(500_000)},Elm,6,-60\n`);
  expect(accounts(result)).toBe(true);
  expect(result.issues[0]!.value).toHaveLength(4_097);
});

test("rows of differing length cost no more than others", async () => {
  const even = HEADER + "02:00:00:00:00:01,Oak,6,loud\n".repeat(100_000);
  const ragged = HEADER + "a\na,b,c,d,e,f\n".repeat(50_000);
  const start = performance.now();
  expect(await read(even)).toMatchObject({ rowCount: 100_000, rejectedCount: 100_000 });
  const evenMs = performance.now() - start;
  const result = await read(ragged);
  expect(performance.now() - start - evenMs).toBeLessThan(3 * evenMs);
  expect(result).toMatchObject({ rowCount: 100_000, rejectedCount: 100_000 });
  expect(result.issues.find(({ count }) => count !== undefined)).toMatchObject({ count: 99_997 });
});
