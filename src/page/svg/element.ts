import { printable, requireFinite } from "../../issues/index.js";
import { htmlText } from "../../report/index.js";

/** Of an element, by name; what is undefined is left out, a number is a length or a place on the drawing. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Characters of one text; a longer one is cut. */
const LONGEST_COUNT = 4000;

/**
 * An element as text, its attributes escaped.
 * @param children markup that `element` or `textNode` made
 * @example element("rect", { x: 1.26, fill: "none" }); // => '<rect x="1.3" fill="none"/>'
 */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes).flatMap(([key, value]) => {
    if (value === undefined) return [];
    return ` ${key}="${typeof value === "number" ? svgNumber(value) : escaped(value)}"`;
  });
  const inside = children.join("");
  return inside === "" ? `<${name}${written.join("")}/>` : `<${name}${written.join("")}>${inside}</${name}>`;
}

/** Text between tags: control characters made visible, markup escaped. @example textNode("<b>"); // => "&lt;b&gt;" */
export function textNode(text: string): string {
  return escaped(text);
}

/**
 * The one rounding of every number in a picture: a tenth of a unit of the drawing.
 * @throws {ArgumentError} for what is not finite
 * @example svgNumber(-0.04); // => "0"
 */
export function svgNumber(lengthPx: number): string {
  requireFinite("lengthPx", lengthPx);
  const rounded = Math.round(lengthPx * 10) / 10;
  return String(rounded === 0 ? 0 : rounded);
}

function escaped(text: string): string {
  return htmlText(printable(text, LONGEST_COUNT));
}
