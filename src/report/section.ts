import type { TextStyle } from "./pen.js";
import { clipped, columnsOf, wrapped } from "./text-layout.js";

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

/**
 * A statement behind a word or mark, wrapped to the width, its further lines set in under the first; a
 * word that no line holds is cut.
 */
export function hanging(lead: string, statement: string, columnCount: number): string[] {
  const indent = columnsOf(lead);
  return wrapped(statement, columnCount - indent).map((line, index) =>
    clipped((index === 0 ? lead : " ".repeat(indent)) + line, columnCount),
  );
}
