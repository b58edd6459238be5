import type { CsvTable } from "../report/index.js";
import { guardCell } from "../scan/index.js";

/** A table as CSV: comma, LF, quotes where they are needed; texts that a spreadsheet would run are defused. */
export function csvText({ heads, rows }: CsvTable): string {
  const lines = [heads, ...rows].map((cells) => cells.map(csvCell).join(","));
  return `${lines.join("\n")}\n`;
}

function csvCell(cell: string | number | null): string {
  if (cell === null) return "";
  if (typeof cell === "number") return String(cell);
  const text = guardCell(cell);
  return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Is a table asked for: by `--csv`, or by the name of the file to write? */
export function wantsCsv(options: { readonly csv?: boolean; readonly output?: string }): boolean {
  return options.csv === true || /\.csv$/i.test(options.output ?? "");
}
