import type { Picture } from "../picture.js";
import { element, textNode } from "./element.js";
import type { Attributes } from "./element.js";

/** Width of every picture in its own units: at a phone's 330 px the smallest text is still 9 px high. */
export const WIDTH_PX = 540;
/** The one size of text. */
export const TEXT_PX = 15;
/** From one line of text to the next. */
export const LINE_PX = 20;

/** Room on the left of a plot for a scale's texts. */
export const LEFT_PX = 44;
/** Room on its right. */
export const RIGHT_PX = 10;

/** What a picture is called. */
export interface PictureWords {
  /** In kebab case; unique. */
  readonly name: string;
  readonly title: string;
}

/** What a picture is made of. */
export interface Drawing extends Omit<Picture, "svg"> {
  readonly heightPx: number;
  /** Markup from `element`. */
  readonly parts: readonly string[];
}

/**
 * A picture for a page or, by `standaloneSvg`, a file. Lines and text take the colour of the text around them, so
 * that it is legible on light and dark and prints; nothing in it is a style.
 */
export function pictureOf({ name, title, description, heightPx, parts }: Drawing): Picture {
  const svg = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      class: "picture",
      role: "img",
      "aria-labelledby": `${name}-title ${name}-desc`,
      viewBox: `0 0 ${WIDTH_PX} ${Math.ceil(heightPx)}`,
      "font-size": TEXT_PX,
      fill: "currentColor",
    },
    element("title", { id: `${name}-title` }, textNode(title)),
    element("desc", { id: `${name}-desc` }, textNode(description)),
    ...parts,
  );
  return { name, title, description, svg };
}

export interface LabelOptions {
  readonly anchor?: "start" | "middle" | "end";
  readonly isFaint?: boolean;
  readonly isStrong?: boolean;
}

/** Text whose base line ends, is centred or begins at a point. */
export function label(x: number, y: number, text: string, options: LabelOptions = {}): string {
  const { anchor = "start", isFaint = false, isStrong = false } = options;
  return element("text", { x, y, ...textAttributes({ anchor, isFaint, isStrong }) }, textNode(text));
}

/** Texts of one sort, what they share said once. */
export function labels(options: LabelOptions, each: readonly PlacedText[]): string {
  const { anchor = "start", isFaint = false, isStrong = false } = options;
  const texts = each.map(({ x, y, text }) => element("text", { x, y }, textNode(text)));
  if (texts.length === 0) return "";
  return element("g", textAttributes({ anchor, isFaint, isStrong }), ...texts);
}

/** A text and where its base line begins, is centred or ends. */
export interface PlacedText {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

function textAttributes({ anchor, isFaint, isStrong }: Required<LabelOptions>): Attributes {
  return {
    "text-anchor": anchor === "start" ? undefined : anchor,
    "fill-opacity": isFaint ? FAINT : undefined,
    "font-weight": isStrong ? "700" : undefined,
  };
}

/** Of faint text: dark grey on white has a contrast of more than 6 : 1 with it, and so has light grey on black. */
const FAINT = "0.75";

/** Attributes of a thin line: one unit wide, which is what SVG has where no width is said. */
export const THIN: Attributes = { stroke: "currentColor", fill: "none" };
/** Of a line that only guides the eye. */
export const GUIDE: Attributes = { ...THIN, "stroke-opacity": "0.3" };

/** The hue of what is ours, legible on white and on black; never the only mark. */
export const HUE = "#3a78d4";

/** Rough width of a text in a usual sans-serif face, for what must not run into its neighbour. */
export function textWidthPx(text: string): number {
  return [...text].length * TEXT_PX * 0.6;
}
