import { based } from "./based.js";
import { inUnits } from "./figures.js";
import { joined, markup } from "./markup.js";
import type { Content, Markup } from "./markup.js";

/** A column: words to the left, figures to the right. */
export interface Column {
  readonly head: Content;
  /** What its figures are in, where they don't say so themselves. */
  readonly unit?: readonly [metric: string, imperial: string];
  readonly align?: "figure";
}

export interface TableParts {
  /** Unique in the page. */
  readonly id: string;
  readonly caption: Content;
  readonly columns: readonly Column[];
  /** `[row][column]`; the first column heads its row. */
  readonly rows: readonly (readonly Content[])[];
  /** Columns that become a sentence above the table where all of its rows say the same. */
  readonly alikeIndex?: readonly number[];
  /** Few rows, or an order that matters: no sorting, no filter. */
  readonly isFixed?: boolean;
}

/** A table, and above it what all of its rows have alike. */
export function table({ alikeIndex = [], ...parts }: TableParts): Markup {
  const lifted =
    parts.rows.length < FEWEST_ALIKE ? [] : alikeIndex.filter((column) => isAlike(parts.rows, column));
  const stays = (_: unknown, column: number): boolean => !lifted.includes(column);
  const rows = parts.rows.map((cells) => cells.filter(stays));
  const box = tableBox({ ...parts, columns: parts.columns.filter(stays), rows });
  return lifted.length === 0 ? box : markup`${alikeWords(parts, lifted)}${box}`;
}

/** Rows that a sentence is shorter than. */
const FEWEST_ALIKE = 3;

function isAlike(rows: TableParts["rows"], column: number): boolean {
  const [first, ...others] = rows.map((cells) => shownText(cells[column] ?? null));
  return others.every((text) => text === first);
}

/** What a reader sees of a cell. */
function shownText(cell: Content): string {
  return markup`${cell}`.html.replace(/<[^>]*>/g, "");
}

function alikeWords({ columns, rows }: TableParts, lifted: readonly number[]): Markup {
  const each = lifted.map((column) => {
    const { head, unit } = columns[column]!;
    // Feet and inches carry their signs.
    return [head, " ", rows[0]![column]!, unit === undefined ? null : inUnits(` ${unit[0]}`, "")];
  });
  return markup`<p class="alike">Every row below: ${joined(each, ", ")}.</p>\n`;
}

/** Columns that a printed page has room for at the usual size. */
const MOST_WIDE = 11;

/** In a box of its own that scrolls where the page is narrow. */
function tableBox({ id, caption, columns, rows, isFixed = false }: TableParts): Markup {
  const heads = columns.map(
    ({ head, unit }) =>
      markup`<th scope="col">${head}${unit === undefined ? null : [" ", inUnits(...unit)]}</th>`,
  );
  const lines = rows.map((cells) => {
    const each = cells.map((cell, index) =>
      index === 0 ? markup`<th scope="row">${cell}</th>` : markup`<td>${cell}</td>`,
    );
    return based("tr", markup`${each}`);
  });
  return markup`<div class="scroll${columns.length > MOST_WIDE ? " tight" : null}" role="region" aria-labelledby="${id}" tabindex="0">
<table class="${figureColumns(columns)}"${isFixed ? null : markup` data-tools="yes"`}>
<caption id="${id}">${caption}</caption>
<thead><tr>${heads}</tr></thead>
<tbody>
${lines}</tbody>
</table>
</div>
`;
}

/** Columns of figures by their number, as the style knows them: shorter than a class a cell. */
function figureColumns(columns: readonly Column[]): string {
  return columns
    .flatMap(({ align }, index) => (align === "figure" ? [`f${String(index + 1)}`] : []))
    .join(" ");
}

/** Columns from their heads; those behind a dash, as `-radio ch`, hold figures. */
export function columnsOf(...heads: readonly string[]): Column[] {
  return heads.map((head) => (head.startsWith("-") ? { head: head.slice(1), align: "figure" } : { head }));
}

/** A column of lengths or weights, its unit in the head. */
export function measured(head: string, metric: string, imperial: string): Column {
  return { head, unit: [metric, imperial], align: "figure" };
}
