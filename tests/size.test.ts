import { gzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { browserBundle, freeNames } from "./tools/browser-bundle.js";

/** Minified and gzipped, with all it stands on. Raised only with a reason in DEVELOPERS.md. */
const CEILINGS_BYTES = [
  { what: "the scorer", code: 'export * from "./src/scorer/index.js";', ceilingBytes: 7_300 },
  {
    what: "scan and scorer together",
    code: 'export * from "./src/scan/index.js"; export * from "./src/scorer/index.js";',
    ceilingBytes: 68_300,
  },
];
const LEAST_SHARE = 0.8;

const MACHINE = /\bprocess\b|\brequire\s*\(|\bBuffer\b|node:|\bwindow\b|\bdocument\b/g;

describe("for a browser", () => {
  test.each(CEILINGS_BYTES)(
    "$what: small, and the ceiling close above it",
    async ({ code, ceilingBytes }) => {
      const sizeBytes = gzipSync(await browserBundle(code)).length;
      expect(sizeBytes).toBeLessThanOrEqual(ceilingBytes);
      expect(sizeBytes, "lower the ceiling").toBeGreaterThan(LEAST_SHARE * ceilingBytes);
    },
  );
  test("the scorer names nothing of the machine", async () => {
    expect((await browserBundle(CEILINGS_BYTES[0]!.code)).match(MACHINE)).toBeNull();
  });
  test("scan and scorer together ask for none of Node's names", async () => {
    // The CSV parser's browser build looks for the global object by its three older names, behind `typeof`.
    const names = ["TextDecoder", "global", "self", "window"];
    expect(freeNames(await browserBundle(CEILINGS_BYTES[1]!.code))).toEqual(names);
  });
  test("the whole library bundles without any of Node's modules", async () => {
    const text = await browserBundle('export * from "./src/index.js";');
    expect(text.length).toBeGreaterThan(1000);
    expect(text.match(/["']node:/g)).toBeNull();
  });
  test("the search for such names finds them", () => {
    for (const text of ["process.env", 'require("x")', "Buffer.from", '"node:fs"', "a=window"])
      expect(text.match(MACHINE)).not.toBeNull();
    expect("processGain, requireRatio(x), buffered, node".match(MACHINE)).toBeNull();
  });
  test("what a module takes from its platform is found, and nothing else", () => {
    const code =
      "const x = 1; process.exit(x); typeof Buffer; require(x); class C { process() { return { Buffer: x } } }";
    expect(freeNames(code)).toEqual(["Buffer", "process", "require"]);
    expect(freeNames("export const f = (process) => process + Math.PI + new Map().size;")).toEqual([]);
    expect(() => freeNames("const = 1")).toThrow("Parsing error");
  });
});
