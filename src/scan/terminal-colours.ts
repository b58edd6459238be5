/** Select Graphic Rendition. @source ECMA-48 section 8.3.117, from memory */
const COLOUR = "\\u001b\\[[0-9;]*m";
const COLOURS = new RegExp(COLOUR, "g");
/** A number, a mark, bars, an address or a heading between colours, or a whole line. */
const COLOURED = new RegExp(
  `${COLOUR} {0,4}(?:[*\\d]{1,3}|[_*▁-█]{1,4}|(?:[0-9A-F]{2}:){5}[0-9A-F]{2}|B?SSID|IN-USE) {0,4}${COLOUR}` +
    `|^${COLOUR}.*${COLOUR}\\s*$`,
);

/**
 * A line as a command prints it without colours. A name that has colours of its own keeps them, unless the
 * command coloured the line.
 * @example withoutColours("\u001b[32m82\u001b[0m  \u001b[32mWPA2\u001b[0m"); // => "82  WPA2"
 */
export function withoutColours(line: string): string {
  return line.includes("\u001b[") && COLOURED.test(line) ? line.replace(COLOURS, "") : line;
}
