import type { TextStyle } from "./pen.js";
import { clipped, columnsOf, wrapped } from "./text-layout.js";

/** The block that a report opens with, each line's label strong. */
export function opening(lines: readonly string[], style: TextStyle): string[] {
  return lines.map((line) => style.pen.strong(line.slice(0, LABEL_COUNT)) + line.slice(LABEL_COUNT));
}

/** A line of that block as what it is: a label and its words; a label that stands for several lines is on the first. */
export function labelled(line: string): readonly [label: string, words: string] {
  return [line.slice(0, LABEL_COUNT).trim(), line.slice(LABEL_COUNT).trim()];
}

/** Columns of a label. */
const LABEL_COUNT = 9;

/** The parts of a report, a blank line between two. */
export function pageText(parts: readonly (readonly string[])[]): string {
  return `${parts.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

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
