import { hangAssumptions, hangFlagLines, nameOf } from "../../report/index.js";
import type { HangReport } from "../../report/index.js";
import { list } from "../html/markup.js";
import { part } from "../html/sheet.js";
import type { Sheet } from "../html/sheet.js";
import { columnsOf, measured, table } from "../html/table.js";
import type { Content } from "../html/markup.js";
import type { PageParts } from "../page-parts.js";
import { crewCautions, crewGlance, statementsOr } from "./crew-parts.js";
import { lengthsTable } from "./order-table.js";
import { cutTable, heightTable, levelTable, weightTable } from "./hang-tables.js";

/** The hang sheet. */
export function riggerSheet(hang: HangReport, parts: PageParts): Sheet {
  const { units } = parts.figures;
  return {
    id: "hang",
    title: "Hang sheet",
    whom: "the riggers",
    body: [
      crewGlance("hang", hang, parts),
      crewCautions("hang", hang),
      part(
        "Before anything is lifted",
        statementsOr(hangFlagLines(hang, units), "Nothing stands in the way."),
      ),
      part("Datum", datums(hang, parts)),
      part("Cut and hang, in this order", cutTable(hang, parts)),
      part("Rows to one trim", levelTable(hang, parts)),
      part("How the lengths come about", heightTable(hang, parts)),
      part("Weight against ratings", weightTable(hang, parts)),
      part("In all, with waste", lengthsTable(hang, parts)),
      part("Assumed", list(hangAssumptions(hang, units))),
    ],
  };
}

function datums({ plan }: HangReport, { figures }: PageParts): Content {
  const rows = plan.hang.datums.map(({ room }, index) => [
    nameOf(room),
    figures.length("cut", `/hang/hang/datums/${String(index)}/laserLineM`, { none: "____" }),
  ]);
  const columns = [...columnsOf("room"), measured("laser line above the floor", "m", "ft in")];
  return table({ id: "datums", caption: "The laser line of each room", columns, rows, isFixed: true });
}
