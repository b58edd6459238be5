import { based } from "./based.js";
import { inUnits } from "./figures.js";
import { markup } from "./markup.js";
import type { Content, Markup } from "./markup.js";

/** A column: words to the left, figures to the right. */
export interface Column {
  readonly head: Content;
  readonly align?: "figure";
}

export interface TableParts {
  /** Unique in the page. */
  readonly id: string;
  readonly caption: Content;
  readonly columns: readonly Column[];
  /** `[row][column]`; the first column heads its row. */
  readonly rows: readonly (readonly Content[])[];
  /** Many columns: smaller in print. */
  readonly isTight?: boolean;
  /** Few rows, or an order that matters: no sorting, no filter. */
  readonly isFixed?: boolean;
}

/** A table in a box of its own that scrolls where the page is narrow. */
export function table({ id, caption, columns, rows, isFixed = false, isTight = false }: TableParts): Markup {
  const heads = columns.map(({ head }) => markup`<th scope="col">${head}</th>`);
  const lines = rows.map((cells) => {
    const each = cells.map((cell, index) =>
      index === 0 ? markup`<th scope="row">${cell}</th>` : markup`<td>${cell}</td>`,
    );
    return based("tr", markup`${each}`);
  });
  return markup`<div class="scroll${isTight ? " tight" : null}" role="region" aria-labelledby="${id}" tabindex="0">
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

/** Columns from their heads; those behind a dash hold figures. @example columnsOf("room", "-radio ch"); */
export function columnsOf(...heads: readonly string[]): Column[] {
  return heads.map((head) => (head.startsWith("-") ? { head: head.slice(1), align: "figure" } : { head }));
}

/** A column of lengths or weights, its unit in the head. */
export function measured(head: string, metric: string, imperial: string): Column {
  return { head: [head, " ", inUnits(metric, imperial)], align: "figure" };
}
