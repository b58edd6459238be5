import { Script } from "node:vm";
import { expect, test } from "vitest";
import { PAGE_SCRIPT } from "../../src/page/page-script.js";
import { PAGE_STYLE } from "../../src/page/page-style.js";

test("the page's script is one that a browser can read, and stays within its element", () => {
  expect(() => new Script(PAGE_SCRIPT)).not.toThrow();
  expect(PAGE_SCRIPT).not.toMatch(/<\/script|<!--/i);
  expect(PAGE_STYLE).not.toMatch(/<\/style|@import|url\(/i);
});
test("asks nobody, keeps nothing, and makes no markup of text", () => {
  expect(PAGE_SCRIPT).not.toMatch(
    /\b(?:fetch|XMLHttpRequest|WebSocket|sendBeacon|import|eval|Function|innerHTML|outerHTML|insertAdjacentHTML|localStorage|sessionStorage|cookie)\b|document\.write/,
  );
});
