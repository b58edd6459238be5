import type { PlanReport } from "../../report/index.js";
import { markup } from "./markup.js";
import type { Content, Markup } from "./markup.js";

/** A sheet: a printed page of its own, for somebody. */
export interface Sheet {
  /** Unique in the page: where its link leads. */
  readonly id: string;
  readonly title: string;
  /** Whom it is for. */
  readonly whom: string;
  readonly body: Content;
}

/** A sheet under its head: whom it is for, the venue, the date and the revision. */
export function sheetMarkup({ id, title, whom, body }: Sheet, report: PlanReport): Markup {
  return markup`<section class="sheet" id="${id}" aria-labelledby="${id}-title">
<header>
<h2 id="${id}-title">${title}</h2>
<dl class="head">
<div><dt>For</dt><dd>${whom}</dd></div>
<div><dt>Venue</dt><dd>${report.rooms.venue.name}</dd></div>
<div><dt>Date</dt><dd>${dateWords(report)}</dd></div>
<div><dt>Revision</dt><dd>${report.revision ?? "none named"}</dd></div>
</dl>
</header>
${body}</section>
`;
}

/** The day and minute that the plan was made for; no clock is read for it. */
export function dateWords({ record: { madeAt } }: Pick<PlanReport, "record">): string {
  if (madeAt === null) return "no date given";
  const time = /^(\d{4}-\d{2}-\d{2})(?:T(\d{2}:\d{2}))?/.exec(madeAt);
  if (time === null) return madeAt;
  return time[2] === undefined ? time[1]! : `${time[1]} ${time[2]} UTC`;
}

/** A part of a sheet under a heading of its own; nothing where it has no content. */
export function part(title: string, ...body: readonly Content[]): Markup {
  return markup`<section class="part">
<h3>${title}</h3>
${body}</section>
`;
}
