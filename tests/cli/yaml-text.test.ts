/** Any text as a YAML scalar: it reads back as it was, and nothing in it acts on a terminal. */
import fc from "fast-check";
import { parse } from "yaml";
import { expect, test } from "vitest";
import { yamlText } from "../../src/cli/yaml-text.js";

const UNSAFE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u;

test.each(["hall", "hall front", "no", "true", "null", "~", "12", "1e3", "02:5e:1c", "a: b", "# x", "- a", "a #b", "'", '"', "\\", "=2+2", "🎺", "\u001b[2J", "a\nb", " a ", "", "\u{e0001}"])(
  "%j",
  (text) => {
    const yaml = yamlText(text);
    expect(yaml).not.toMatch(UNSAFE);
    expect(parse(`key: ${yaml} # a comment`)).toEqual({ key: text });
    expect(parse(`[${yaml}, { a: ${yaml} }]`)).toEqual([text, { a: text }]);
  },
); // prettier-ignore

test("whatever the text", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      const yaml = yamlText(text);
      expect(yaml).not.toMatch(UNSAFE);
      expect(parse(`{ key: ${yaml} }`)).toEqual({ key: text });
    }),
    { numRuns: 500 },
  );
});
