import { lengthItemWords, nameOf, PIECE_WORDS } from "../../report/index.js";
import type { HangReport } from "../../report/index.js";
import { joined } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { columnsOf, table } from "../html/table.js";
import type { PageParts } from "../page-parts.js";

type Line = HangReport["plan"]["order"]["lines"][number];

const COLUMNS = columnsOf("item", "-order", "-needed", "spare or pieces", "for");

/** A line an item: how much to order, and what needs it. */
export function orderTable({ plan }: HangReport, parts: PageParts): Content {
  const rows = plan.order.lines.map((line, index) => rowOf(line, index, parts));
  return table({ id: "order-table", caption: "What to order", columns: COLUMNS, rows });
}

/** What comes by the length. */
export function lengthsTable({ plan }: HangReport, parts: PageParts): Content {
  const rows = plan.order.lines.flatMap((line, index) =>
    line.kind === "lengths" ? [rowOf(line, index, parts).slice(0, -1)] : [],
  );
  return table({
    id: "lengths",
    caption: "Chain, rope, stem and cord",
    columns: COLUMNS.slice(0, -1),
    rows,
    isFixed: true,
  });
}

function rowOf(line: Line, index: number, { figures }: PageParts): Content[] {
  const at = `/hang/order/lines/${String(index)}`;
  if (line.kind === "pieces")
    return [
      PIECE_WORDS[line.item],
      figures.figure("count", `${at}/orderCount`),
      figures.figure("count", `${at}/neededCount`),
      [figures.figure("count", `${at}/spareCount`), " spare"],
      joined(
        line.needs.map(({ name, pieceCount }, need) =>
          pieceCount === 1
            ? nameOf(name)
            : [nameOf(name), " ", figures.figure("count", `${at}/needs/${String(need)}/pieceCount`)],
        ),
        ", ",
      ),
    ];
  const isSpooled = line.order.spoolCount !== null;
  const long = line.order.tooLongCount > 0;
  return [
    lengthItemWords(line, figures.units),
    isSpooled
      ? [
          figures.figure("count", `${at}/order/spoolCount`),
          " x ",
          figures.length("order", `${at}/order/spoolM`),
        ]
      : figures.length("order", `${at}/order/orderM`),
    figures.length("order", `${at}/order/lengthM`),
    [
      figures.figure("count", `${at}/order/pieceCount`),
      " pieces",
      long ? ["; ", figures.figure("count", `${at}/order/tooLongCount`), " LONGER THAN A SPOOL"] : null,
    ],
    line.needs.map(({ name }) => nameOf(name)).join(", "),
  ];
}
