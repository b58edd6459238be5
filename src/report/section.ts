import type { TextStyle } from "./pen.js";
import { clipped, wrapped } from "./text-layout.js";

/** A part of a text report under its title. */
export function section(title: string, style: TextStyle, lines: readonly string[]): string[] {
  return [style.pen.strong(clipped(title, style.columnCount)), ...lines];
}

/** Each statement behind a dash, wrapped to the width. */
export function bullets(statements: readonly string[], style: TextStyle): string[] {
  return statements.flatMap((statement) =>
    wrapped(statement, style.columnCount - 2).map((line, index) => (index === 0 ? "- " : "  ") + line),
  );
}
