import { wrapped } from "../../report/index.js";
import type { Picture } from "../picture.js";
import { element, textNode } from "./element.js";
import { LINE_PX, WIDTH_PX } from "./drawing.js";

/** Around the drawing. */
const EDGE_PX = 12;
/** Characters of a line of the title. */
const TITLE_COUNT = 56;

/** A picture as a file of its own: dark on a white ground, its title above it. */
export function standaloneSvg({ svg, title }: Picture): string {
  const found = /viewBox="0 0 (\d+) (\d+)"/.exec(svg)!;
  const lines = wrapped(title, TITLE_COUNT);
  const headPx = EDGE_PX + LINE_PX * lines.length + EDGE_PX;
  const [widthPx, heightPx] = [WIDTH_PX + 2 * EDGE_PX, Number(found[2]) + headPx + EDGE_PX];
  const box = { x: -EDGE_PX, y: -headPx, width: widthPx, height: heightPx };
  const ground = element("rect", { ...box, fill: "#fff" });
  const head = lines.map((line, index) =>
    element(
      "text",
      { x: 0, y: EDGE_PX - headPx + LINE_PX * (index + 0.75), "font-weight": "700" },
      textNode(line),
    ),
  );
  const size = `width="${widthPx}" height="${heightPx}"`;
  const view = `${size} viewBox="${box.x} ${box.y} ${widthPx} ${heightPx}" color="#1a1a1a" font-family="sans-serif"`;
  return `${svg.replace(found[0], () => view).replace("</desc>", () => `</desc>${ground}${head.join("")}`)}\n`;
}
