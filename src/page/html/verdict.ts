import { spareWords, verdictMark, verdictWord } from "../../report/index.js";
import { markup } from "./markup.js";
import type { Content, Markup } from "./markup.js";

/** A verdict with whole decibels: `x fails by 14 dB`. The frame around it is the style's; no colour tells it. */
export function verdictTag(workingMarginDb: number): Markup {
  return markup`<span class="verdict ${verdictWord(workingMarginDb)}">${spareWords(workingMarginDb)}</span>`;
}

/** A figure of what is to spare behind its mark. */
export function marked(workingMarginDb: number, figure: Content): Content {
  return [markup`<span class="mark">${verdictMark(workingMarginDb)}</span> `, figure];
}

/** How the marks are read. */
export const VERDICT_KEY =
  "dB to spare: what is left of the signal after interference and fading. x fails < 0 ≤ ! thin < 6 ≤ o sound < 15 ≤ * ample.";
