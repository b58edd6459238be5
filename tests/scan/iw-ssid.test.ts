import { describe, expect, test } from "vitest";
import { decodeIwSsid } from "../../src/scan/iw-ssid.js";

describe("a name", () => {
  // Escapes: iw scan.c output format (Linux nl80211 tool), read. Bytes: RFC 3629.
  test.each([
    ["Lantern Guest", "Lantern Guest"],
    ["Caf\\xc3\\xa9", "Café"],
    ["\\xe2\\x98\\x83\\xf0\\x9f\\x92\\xa1", "☃💡"],
    ["\\x20lead\\x20", " lead "],
    ["back\\x5cslash \\x5cx41", "back\\slash \\x41"],
    ["bad \\xff byte", "bad \ufffd byte"],
    ["\\xef\\xbb\\xbfmark", "\ufeffmark"],
    ["a\\x00b", "a\0b"],
    ["\\x0a\\x1b[2J", "\n\u001b[2J"],
    ["\\xg0", "\\xg0"],
  ])("%s", (text, name) => expect(decodeIwSsid(text)).toBe(name));

  test.each(["", "\\x00", "\\x00\\x00\\x00\\x00\\x00"])("%j is hidden", (text) =>
    expect(decodeIwSsid(text)).toBe(""),
  );
});
