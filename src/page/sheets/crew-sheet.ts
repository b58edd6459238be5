import { checkAssumptions, CHECKS_KEY, checkWords, STAGE_TITLES } from "../../report/index.js";
import type { HangReport } from "../../report/index.js";
import { list, markup } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { part } from "../html/sheet.js";
import type { Sheet } from "../html/sheet.js";
import type { PageParts } from "../page-parts.js";
import { crewCautions, crewGlance } from "./crew-parts.js";

type Check = HangReport["plan"]["checks"][number];
type Stage = keyof typeof STAGE_TITLES;

/** The install order: a tick a step, blanks for what is read. */
export function crewSheet(hang: HangReport, parts: PageParts): Sheet {
  const { checks } = hang.plan;
  const stages = (Object.keys(STAGE_TITLES) as Stage[]).filter((stage) =>
    checks.some((check) => check.stage === stage),
  );
  return {
    id: "checks",
    title: "Install order and checks",
    whom: "the install crew",
    body: [
      crewGlance("checks", hang, parts),
      crewCautions("checks", hang),
      markup`<p class="key">${CHECKS_KEY}</p>\n`,
      stages.map((stage) => part(STAGE_TITLES[stage], stageList(checks, stage, parts))),
      part("Assumed", list(checkAssumptions())),
    ],
  };
}

function stageList(checks: readonly Check[], stage: Stage, { figures }: PageParts): Content {
  const items = checks
    .filter((check) => check.stage === stage)
    .map((check) => markup`<li>${checkWords(check, figures.units)}${blanks(check)}</li>\n`);
  return markup`<ul class="checks">\n${items}</ul>\n`;
}

/** What is written down beside the tick: the columns of a readings file, those that are known filled in. */
function blanks({ blanks: each }: Check): Content {
  if (each.length === 0) return null;
  const filled = each.flatMap(({ column, filled: known }) => (known === null ? [] : [`${column} ${known}`]));
  const open = each.flatMap(({ column, filled: known }) => (known === null ? [column] : []));
  return markup`<span class="blanks">${filled.join(", ")} ${open.map((column) => markup`<span class="blank">${column}</span> `)}</span>`;
}
