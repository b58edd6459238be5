import { emergencyStatements, hangGlance, labelled } from "../../report/index.js";
import type { CrewSheet, HangReport } from "../../report/index.js";
import { facts, list, markup } from "../html/markup.js";
import type { Markup } from "../html/markup.js";
import { part } from "../html/sheet.js";
import type { PageParts } from "../page-parts.js";

/** What a sheet of the crew opens with. */
export function crewGlance(sheet: CrewSheet, hang: HangReport, { figures }: PageParts): Markup {
  const lines = hangGlance({ ...hang, sheets: [sheet] }, figures.units).map(labelled);
  const told = lines.map(([label, words]) =>
    label === "STOP"
      ? ([markup`<strong>${label}</strong>`, markup`<strong>${words}</strong>`] as const)
      : ([label, words] as const),
  );
  return markup`<div class="glance">${facts(told)}</div>\n`;
}

/** What whoever works by a sheet must read first. */
export function crewCautions(sheet: CrewSheet, { plan, cautions }: HangReport): Markup {
  return markup`${emergencyPart(plan.hang.emergency)}${cautionPart(cautions[sheet])}`;
}

export function emergencyPart(notice: HangReport["plan"]["hang"]["emergency"]): Markup {
  return part("Emergency and exit lighting", list(emergencyStatements(notice)));
}

export function cautionPart(cautions: readonly { readonly text: string }[]): Markup {
  return part("Cautions", markup`<div class="cautions">${list(sentences(cautions))}</div>\n`);
}

/** A caution that takes several short lines on a card is one sentence here. */
export function sentences(cautions: readonly { readonly text: string }[]): string[] {
  const told: string[] = [];
  for (const { text } of cautions)
    if (/^[a-z]/.test(text) && told.length > 0) told.push(`${told.pop()!} ${text}`);
    else told.push(text);
  return told;
}

/** Statements, or the one that says that there is none. */
export function statementsOr(statements: readonly string[], none: string): Markup {
  return statements.length === 0 ? markup`<p>${none}</p>\n` : list(statements);
}
