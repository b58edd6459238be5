import { markup, trusted } from "./markup.js";
import type { Markup } from "./markup.js";

const FROM = / data-from="(\/[^"]*)"/g;

/**
 * An element whose figures share a stretch of the plan file: it carries the stretch as `data-at`, and each figure in
 * it only the rest, so that a page of many figures stays small. A `data-from` that starts with a slash is whole.
 * @param open the tag's name, and attributes of the project's own
 */
export function based(open: string, inner: Markup): Markup {
  const [name] = open.split(" ");
  const pointers = [...inner.html.matchAll(FROM)].map(([, pointer]) => pointer!);
  const stretch = pointers.length < 2 ? "" : commonStretch(pointers);
  const at = stretch === "" ? null : markup` data-at="${trusted(stretch)}"`;
  const html = stretch === "" ? inner.html : inner.html.replaceAll(` data-from="${stretch}/`, ' data-from="');
  return markup`<${trusted(open)}${at}>${trusted(html)}</${trusted(name!)}>\n`;
}

/** The whole steps that all pointers begin with. */
function commonStretch([first, ...others]: readonly string[]): string {
  const steps = first!.split("/").slice(0, -1);
  const shares = (stretch: string): boolean => others.every((pointer) => pointer.startsWith(`${stretch}/`));
  while (steps.length > 1 && !shares(steps.join("/"))) steps.pop();
  return steps.join("/");
}
