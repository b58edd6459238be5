/** The harness itself: whatever a page does wrong is seen, and nothing where nothing is wrong. */
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { scratch } from "../cli/scratch.js";
import { axeFaults } from "./axe.js";
import { chromiumPath } from "./chromium.js";
import { NOTHING, pageOpener, PHONE } from "./watched-page.js";

const { file, folder } = scratch();
const open = pageOpener();

const page = (body: string, head = ""): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Planted</title>${head}</head>` +
  `<body><main><h1>Planted</h1>${body}</main></body></html>`;
const POLICY = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'">`;
const script = (code: string): string => `<script>${code}</script>`;

test("a quiet page did nothing, with or without a policy", async () => {
  for (const [name, head] of [
    ["quiet.html", ""],
    ["quiet-policy.html", POLICY],
  ] as const) {
    const { doings } = await open(file(name, page("<p>Words.</p>", head)));
    expect(doings).toEqual(NOTHING);
  }
});

describe("what a page does is seen:", () => {
  test.each([
    ["console", "console.warn('a word')", "warning: a word"],
    ["errors", "throw new Error('broken')", "broken"],
    ["requests", "fetch('http://192.0.2.1/a').catch(() => {})", "http://192.0.2.1/a"],
    ["requests", "new Image().src = 'https://example.invalid/b.png'", "https://example.invalid/b.png"],
    ["requests", "new WebSocket('ws://192.0.2.1/c')", "ws://192.0.2.1/c"],
    ["opened", "alert('hello')", "dialog: hello"],
    ["opened", "document.body.append(document.createElement('iframe'))", "frame"],
  ] as const)("%s: %s", async (kind, code, expected) => {
    const { doings } = await open(
      file("doing.html", page(script(`addEventListener("load", () => { ${code} })`))),
    );
    await expect.poll(() => doings[kind]).toContain(expected);
  });
  test.each([
    ["an inline script", script("document.title = 'Ran'"), "script-src-elem inline"],
    [
      "an inline handler",
      `<img src="data:," alt="" onerror="document.title = 'Ran'">`,
      "script-src-attr inline",
    ],
    ["a stranger's picture", `<img src="http://192.0.2.1/d.png" alt="">`, "img-src http://192.0.2.1/d.png"],
    ["a style", `<p style="color: red">Red</p>`, "style-src-attr inline"],
  ])("%s against the policy", async (_what, body, expected) => {
    const { page: shown, doings } = await open(file("policy.html", page(body, POLICY)));
    await expect.poll(() => doings.violations).toContain(expected);
    expect(await shown.title()).toBe("Planted");
  });
});

describe("axe-core", () => {
  test("judges a page under the strictest policy and finds nothing wrong with a sound one", async () => {
    const { page: shown, doings } = await open(file("sound.html", page("<p>Words.</p>", POLICY)));
    expect(await axeFaults(shown)).toEqual([]);
    expect(doings).toEqual(NOTHING);
  });
  test("finds what is wrong", async () => {
    const body = `<img src="data:,"><p><span style="color: #bbb; background: #fff">Faint</span></p>`;
    const { page: shown } = await open(file("unsound.html", page(body)));
    const rules = (await axeFaults(shown)).map((fault) => fault.split(":")[0]);
    expect(rules).toEqual(["color-contrast", "image-alt"]);
  });
});

describe("a page is shown as asked:", () => {
  const style =
    "<style>@media print { main { width: 111px } } @media (prefers-color-scheme: dark) { main { width: 222px } }" +
    " @media (max-width: 400px) { main { width: 333px } }</style>";
  test.each([
    ["in print", { media: { media: "print" } }, 111],
    ["dark", { media: { colorScheme: "dark" } }, 222],
    ["on a phone", { viewport: PHONE }, 333],
  ] as const)("%s", async (_how, showing, widthPx) => {
    const { page: shown } = await open(file("shown.html", page("", style)), showing);
    expect((await shown.locator("main").boundingBox())?.width).toBe(widthPx);
  });
  test("without scripts", async () => {
    const path = file("scripts.html", page(script("document.title = 'Ran'")));
    expect(await (await open(path)).page.title()).toBe("Ran");
    expect(await (await open(path, { javaScriptEnabled: false })).page.title()).toBe("Planted");
  });
});

describe("without Chromium", () => {
  test("a browser test fails and says how to get it", () => {
    const absent = join(folder, "absent");
    const words = /^no Chromium at .*absent.*apt-get install chromium.*STILLBAND_CHROMIUM/;
    expect(() => chromiumPath({}, absent)).toThrow(words);
    expect(() => chromiumPath({ STILLBAND_CHROMIUM: absent }, process.execPath)).toThrow(words);
    expect(chromiumPath({ STILLBAND_CHROMIUM: process.execPath }, absent)).toBe(process.execPath);
  });
});
