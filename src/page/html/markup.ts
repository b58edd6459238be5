import { printable } from "../../issues/index.js";
import { htmlText } from "../../report/index.js";

/** HTML that is whole: only `markup` and `trusted` make it. */
export class Markup {
  constructor(readonly html: string) {}
}

/**
 * What a template takes: text becomes harmless, markup stays, nothing is nothing. A number is no content: it comes as
 * a figure of the plan file.
 */
export type Content = string | Markup | null | readonly Content[];

/** Characters of one text; a longer one is cut. */
const LONGEST_COUNT = 4000;

/**
 * A template of HTML: whatever text is put into it is made visible and escaped, in an element or a quoted attribute.
 * @example markup`<b>${"<i>"}</b>`.html; // => "<b>&lt;i&gt;</b>"
 */
export function markup(parts: TemplateStringsArray, ...contents: readonly Content[]): Markup {
  return new Markup(parts.map((part, index) => part + htmlOf(contents[index] ?? null)).join(""));
}

/** Text of the project's own that is HTML already: a picture, the style, the script. */
export function trusted(html: string): Markup {
  return new Markup(html);
}

function htmlOf(content: Content): string {
  if (content === null) return "";
  if (typeof content === "string") return htmlText(printable(content, LONGEST_COUNT));
  return content instanceof Markup ? content.html : content.map(htmlOf).join("");
}

/** Contents with something between them. */
export function joined(contents: readonly Content[], between: Content): Content {
  return contents.flatMap((content, index) => (index === 0 ? [content] : [between, content]));
}

/** A list, a statement an item. */
export function list(items: readonly Content[], tag: "ul" | "ol" = "ul"): Markup {
  const each = items.map((item) => markup`<li>${item}</li>\n`);
  return tag === "ul" ? markup`<ul>\n${each}</ul>\n` : markup`<ol>\n${each}</ol>\n`;
}

/** Labels with what they say; an empty label goes on with the line before. */
export function facts(lines: readonly (readonly [label: Content, words: Content])[]): Markup {
  const each = lines.map(([label, words], index) => {
    const goesOn = label === "" && index > 0;
    return goesOn ? markup`<dd>${words}</dd>\n` : markup`<dt>${label}</dt><dd>${words}</dd>\n`;
  });
  return markup`<dl class="facts">\n${each}</dl>\n`;
}
