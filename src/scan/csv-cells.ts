import { parse } from "csv-parse/sync";

/**
 * Cells of whole records. A line ends with LF, CR LF or a lone CR; a blank line is one empty cell; rows may
 * differ in length; a quote within a cell that didn't open with one is part of it.
 * Text without a quote is cut by hand: quicker, and rows that differ in length cost nothing.
 * @param text whole records whose quotes are sound
 * @example csvCells('a,"b, c"\n', ","); // => [["a", "b, c"]]
 */
export function csvCells(text: string, delimiter: string): readonly (readonly string[])[] {
  if (!text.includes('"')) return plainCells(text, delimiter);
  return parse(text, {
    delimiter,
    record_delimiter: text.includes("\r") ? ["\r\n", "\n", "\r"] : "\n",
    relax_column_count: true,
    relax_quotes: true,
  });
}

function plainCells(text: string, delimiter: string): readonly (readonly string[])[] {
  const lines = text.includes("\r") ? text.split(/\r\n|\n|\r/) : text.split("\n");
  if (lines.at(-1) === "") lines.pop();
  return lines.map((line) => line.split(delimiter));
}
