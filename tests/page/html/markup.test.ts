import { describe, expect, test } from "vitest";
import { facts, joined, list, markup, trusted } from "../../../src/page/html/markup.js";
import { pointed } from "../../../src/page/html/pointer.js";

describe("markup", () => {
  test("escapes what is put into it, in elements and attributes", () => {
    const evil = `"><img src=x onerror='alert(1)'>&`;
    expect(markup`<a title="${evil}">${evil}</a>`.html).toBe(
      '<a title="&quot;&gt;&lt;img src=x onerror=&#39;alert(1)&#39;&gt;&amp;">&quot;&gt;&lt;img src=x onerror=&#39;alert(1)&#39;&gt;&amp;</a>',
    );
  });
  test("makes controls and bidirectional characters visible", () => {
    expect(markup`${"a\u202eb\u0007\u2028"}`.html).toBe("a\\u202eb\\u0007\\u2028");
  });
  test("keeps markup and lists, and nothing as nothing", () => {
    expect(markup`<p>${[markup`<b>${"x"}</b>`, null, joined(["a", "b"], ", ")]}</p>`.html).toBe(
      "<p><b>x</b>a, b</p>",
    );
    expect(markup`${trusted("<svg/>")}`.html).toBe("<svg/>");
  });
  test("lists statements and labels", () => {
    expect(list(["<", ">"], "ol").html).toBe("<ol>\n<li>&lt;</li>\n<li>&gt;</li>\n</ol>\n");
    const lines = facts([
      ["Do", "1 a"],
      ["", "2 b"],
    ]);
    expect(lines.html).toBe('<dl class="facts">\n<dt>Do</dt><dd>1 a</dd>\n<dd>2 b</dd>\n</dl>\n');
  });
});

describe("a JSON pointer", () => {
  // The document and values of RFC 6901, section 5.
  const json = {
    foo: ["bar", "baz"],
    "": 0,
    "a/b": 1,
    "c%d": 2,
    "e^f": 3,
    "g|h": 4,
    "i\\j": 5,
    'k"l': 6,
    " ": 7,
    "m~n": 8,
  };
  test.each([
    ["", json],
    ["/foo", ["bar", "baz"]],
    ["/foo/0", "bar"],
    ["/", 0],
    ["/a~1b", 1],
    ["/c%d", 2],
    ["/e^f", 3],
    ["/g|h", 4],
    ["/i\\j", 5],
    ['/k"l', 6],
    ["/ ", 7],
    ["/m~0n", 8],
  ])("%j", (pointer, value) => {
    expect(pointed(json, pointer)).toEqual(value);
  });
  test.each(["/bar", "/foo/2", "/foo/length/0", "/toString", "/foo/0/0"])(
    "finds nothing at %s",
    (pointer) => {
      expect(() => pointed(json, pointer)).toThrow(RangeError);
    },
  );
});
