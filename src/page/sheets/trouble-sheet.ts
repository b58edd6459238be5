import type { HangReport } from "../../report/index.js";
import { list, markup } from "../html/markup.js";
import type { Sheet } from "../html/sheet.js";
import { crewCautions } from "./crew-parts.js";

/** What to do, in order, when something goes wrong. */
export function troubleSheet(hang: HangReport): Sheet {
  const cards = hang.plan.trouble.map(
    ({ sign, steps }) =>
      markup`<section class="trouble">\n<h3>${sign}</h3>\n${list(steps, "ol")}</section>\n`,
  );
  return {
    id: "trouble",
    title: "Trouble card",
    whom: "the booth",
    body: [markup`<div class="troubles">\n${cards}</div>\n`, crewCautions("trouble", hang)],
  };
}
