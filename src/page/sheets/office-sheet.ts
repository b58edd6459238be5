import { orderAssumptions, orderGapLines, venueCautions } from "../../report/index.js";
import type { HangReport } from "../../report/index.js";
import { list } from "../html/markup.js";
import { part } from "../html/sheet.js";
import type { Sheet } from "../html/sheet.js";
import type { PageParts } from "../page-parts.js";
import { crewCautions, crewGlance, statementsOr } from "./crew-parts.js";
import { evidenceParts } from "./evidence-parts.js";
import { orderTable } from "./order-table.js";

/** The order, how far the plan can be trusted, what it assumes and where its figures come from. */
export function officeSheet(hang: HangReport | null, parts: PageParts): Sheet {
  return {
    id: "office",
    title: "Order, evidence and sources",
    whom: "the office",
    body: [
      hang === null ? null : orderParts(hang, parts),
      ...evidenceParts(parts),
      hang === null
        ? part("Cautions", list(venueCautions(parts.report.rooms.venue)))
        : crewCautions("order", hang),
    ],
  };
}

function orderParts(hang: HangReport, parts: PageParts) {
  return [
    crewGlance("order", hang, parts),
    part("Order", orderTable(hang, parts)),
    part("Open", statementsOr(orderGapLines(hang.plan.order), "Nothing.")),
    part("Assumed of the order", list(orderAssumptions(hang))),
  ];
}
