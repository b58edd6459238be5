import { pathToFileURL } from "node:url";
import type { BrowserContextOptions, Page } from "playwright-core";
import { onTestFinished } from "vitest";
import { sharedBrowser } from "./chromium.js";

/** How a page is shown. `media` is what `emulateMedia` takes: print, dark, less motion. */
export interface Showing extends Pick<
  BrowserContextOptions,
  "javaScriptEnabled" | "viewport" | "permissions"
> {
  readonly media?: NonNullable<Parameters<Page["emulateMedia"]>[0]>;
}

export const PHONE = { width: 360, height: 740 } as const;
export const LAPTOP = { width: 1280, height: 800 } as const;

/** All that a page did which a page of ours must not do, each list in the order of events. */
export interface Doings {
  /** Console messages of any kind, as `error: …`. */
  readonly console: string[];
  /** Exceptions that nothing caught. */
  readonly errors: string[];
  /** What the page's Content-Security-Policy stopped, as `script-src-elem inline`. */
  readonly violations: string[];
  /** Every request for anything but a file or data, stopped by its policy or not; none was let through. */
  readonly requests: string[];
  /** Windows, dialogs, downloads and frames that it opened by itself. */
  readonly opened: string[];
}

export interface WatchedPage {
  readonly page: Page;
  readonly doings: Doings;
}

/** Nothing at all was done. */
export const NOTHING: Doings = { console: [], errors: [], violations: [], requests: [], opened: [] };

/** Opens files in a browser shared by the test file; each page has a context of its own, closed with its test. */
export function pageOpener(): (path: string, showing?: Showing) => Promise<WatchedPage> {
  const browser = sharedBrowser();
  return async (path, { media, ...showing } = {}) => {
    const context = await (await browser()).newContext({ viewport: LAPTOP, ...showing });
    onTestFinished(() => context.close());
    const page = await context.newPage();
    const doings = await watch(page);
    if (media !== undefined) await page.emulateMedia(media);
    await page.goto(path.startsWith("data:") ? path : pathToFileURL(path).href);
    return { page, doings };
  };
}

/** In place before the first of the page's own scripts; nothing here weakens its policy. */
async function watch(page: Page): Promise<Doings> {
  const doings: Doings = { console: [], errors: [], violations: [], requests: [], opened: [] };
  const context = page.context();
  page.on("console", (message) => doings.console.push(`${message.type()}: ${message.text()}`));
  page.on("pageerror", (error) => doings.errors.push(error.message));
  page.on("dialog", (dialog) => {
    doings.opened.push(`dialog: ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on("download", (download) => doings.opened.push(`download: ${download.suggestedFilename()}`));
  page.on("popup", (popup) => doings.opened.push(`window: ${popup.url()}`));
  page.on("frameattached", () => doings.opened.push("frame"));
  page.on("websocket", (socket) => doings.requests.push(socket.url()));
  context.on("request", (request) => {
    if (!LOCAL.test(request.url())) doings.requests.push(request.url());
  });
  await context.route(
    (url) => !LOCAL.test(url.href),
    (route) => route.abort(),
  );
  await page.exposeBinding(REPORT, (_source, violation: string) => doings.violations.push(violation));
  await page.addInitScript(`
    const report = globalThis.${REPORT};
    addEventListener("securitypolicyviolation", (event) =>
      report(event.effectiveDirective + " " + event.blockedURI));
  `);
  return doings;
}

const LOCAL = /^(?:file|data|blob|about):/;
const REPORT = "reportPolicyViolation";
