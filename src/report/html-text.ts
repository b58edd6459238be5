const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * Text for HTML, in an element or in a quoted attribute: nothing in it is markup.
 * @example htmlText("<b>&'"); // => "&lt;b&gt;&amp;&#39;"
 */
export function htmlText(text: string): string {
  return text.replace(/[&<>"']/g, (character) => ENTITIES[character]!);
}
