import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { describe, expect, test } from "vitest";
import { PROJECT } from "./tools/core-program.js";

/** The scorer with all it stands on, minified and gzipped. Raised only with a reason in DEVELOPERS.md. */
const SCORER_CEILING_BYTES = 7_250;
const SCORER_FLOOR_BYTES = 0.8 * SCORER_CEILING_BYTES;

const bundle = async (entry: string): Promise<string> => {
  const result = await build({
    absWorkingDir: PROJECT,
    entryPoints: [entry],
    bundle: true,
    write: false,
    minify: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    legalComments: "none",
    logLevel: "silent",
  });
  return result.outputFiles[0]!.text;
};

const MACHINE = /\bprocess\b|\brequire\s*\(|\bBuffer\b|node:|\bwindow\b|\bdocument\b/g;

describe("for a browser", () => {
  test("the scorer stays small, and the ceiling close above it", async () => {
    const size = gzipSync(await bundle(join("src", "scorer", "index.ts"))).length;
    expect(size).toBeLessThanOrEqual(SCORER_CEILING_BYTES);
    expect(size, "lower the ceiling").toBeGreaterThan(SCORER_FLOOR_BYTES);
  });
  test("the scorer names nothing of the machine", async () => {
    expect((await bundle(join("src", "scorer", "index.ts"))).match(MACHINE)).toBeNull();
  });
  test("the whole library bundles without any of Node's modules", async () => {
    const text = await bundle(join("src", "index.ts"));
    expect(text.length).toBeGreaterThan(1000);
    expect(text.match(/["']node:/g)).toBeNull();
  });
  test("the search for such names finds them", () => {
    for (const text of ["process.env", 'require("x")', "Buffer.from", '"node:fs"', "a=window"])
      expect(text.match(MACHINE)).not.toBeNull();
    expect("processGain, requireRatio(x), buffered, node".match(MACHINE)).toBeNull();
  });
});
