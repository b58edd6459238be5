/** A text between double quotes, as JSON and YAML both read it. */
export function yamlText(text: string): string {
  return JSON.stringify(text);
}

/** Plain data on one line, as JSON and YAML both read it. */
export function yamlFlow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(yamlFlow).join(", ")}]`;
  return typeof value === "string" && /^[a-z][a-z-]*$/.test(value) && !RESERVED.has(value)
    ? value
    : JSON.stringify(value);
}

/** Words that some readers of YAML take for true, false or nothing. */
const RESERVED = new Set(["yes", "no", "on", "off", "true", "false", "null", "y", "n"]);

/** Text as comment lines, broken at blanks so that none is longer than 100 columns; line ends stay. */
export function commentLines(text: string): string[] {
  return text.split("\n").flatMap((part) => {
    const lines: string[] = [];
    let line = "#";
    for (const word of part.split(" ")) {
      if (line !== "#" && line.length + 1 + word.length > 100) {
        lines.push(line);
        line = "#";
      }
      line += ` ${word}`;
    }
    return [...lines, line];
  });
}
