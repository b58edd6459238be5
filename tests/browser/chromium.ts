import { existsSync } from "node:fs";
import { chromium } from "playwright-core";
import type { Browser } from "playwright-core";
import { afterAll } from "vitest";

const DEBIANS = "/usr/bin/chromium";

/** Quiet, and unable to look up any host: what a page asks for goes nowhere. */
const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--host-resolver-rules=MAP * ~NOTFOUND",
];

/**
 * Where Chromium is: `STILLBAND_CHROMIUM`, else where Debian's package puts it.
 * @throws {Error} that says how to get it, where it is not there: no browser test passes for want of a browser
 */
export function chromiumPath(
  env: Readonly<Record<string, string | undefined>> = process.env,
  debians: string = DEBIANS,
): string {
  const path = env["STILLBAND_CHROMIUM"] ?? debians;
  if (existsSync(path)) return path;
  throw new Error(
    `no Chromium at ${path}: the browser tests need it. On Debian: sudo apt-get install chromium; ` +
      "elsewhere set STILLBAND_CHROMIUM to the program",
  );
}

/** One browser for a test file, started when first asked for, with an empty user folder; closed at the file's end. */
export function sharedBrowser(): () => Promise<Browser> {
  let started: Promise<Browser> | undefined;
  afterAll(async () => {
    await (await started?.catch(() => undefined))?.close();
  });
  return async () => {
    started ??= chromium.launch({ executablePath: chromiumPath(), headless: true, args: FLAGS });
    return await started;
  };
}
