import type { LengthUnit } from "../../report/index.js";
import { FIGURE_TEXTS, LENGTH_TEXTS } from "./figure-kinds.js";
import type { FigureText, LengthText } from "./figure-kinds.js";
import { markup, trusted } from "./markup.js";
import type { Content, Markup } from "./markup.js";
import { pointed } from "./pointer.js";

/** What a figure may have beside its number. */
export interface FigureMore {
  /** How it came about. */
  readonly title?: string;
  /** What stands where there is no number; why, as a rule. */
  readonly none?: Content;
}

/** The plan file's numbers as HTML: each is looked up where it stands there, so that the page says what the file says. */
export class Figures {
  constructor(
    readonly json: object,
    readonly units: LengthUnit,
  ) {}

  /** @throws {RangeError} where the plan file has nothing there, or no number */
  value(pointer: string): number | null {
    const value = pointed(this.json, pointer);
    if (value === null) return null;
    if (typeof value === "number" && Number.isFinite(value)) return value;
    throw new RangeError(`the plan file has no number at ${pointer}`);
  }

  /** A number in its unit. */
  figure(kind: FigureText, pointer: string, more: FigureMore = {}): Markup {
    const value = this.value(pointer);
    if (value === null) return none(more);
    return markup`<data value="${String(value)}" data-from="${pointer}"${titled(more)}>${signed(FIGURE_TEXTS[kind](value))}</data>`;
  }

  /** A length or weight, in metres and feet or kilograms and pounds: the page shows one of the two. */
  length(kind: LengthText, pointer: string, more: FigureMore = {}): Markup {
    const value = this.value(pointer);
    if (value === null) return none(more);
    // Digits and unit signs: nothing in them to escape, and inches are many.
    const [metric, imperial] = LENGTH_TEXTS[kind].map((text) => trusted(signed(text(value))));
    return markup`<data value="${String(value)}" data-from="${pointer}" data-unit="${kind === "weight" ? "kg" : "m"}"${titled(more)}>${inUnits(metric!, imperial!)}</data>`;
  }

  /** A length in both units, the reader's first. */
  bothLengths(kind: LengthText, pointer: string, more: FigureMore = {}): Markup {
    const value = this.value(pointer);
    if (value === null) return none(more);
    const texts = LENGTH_TEXTS[kind].map((text) => signed(text(value)));
    const [first, second] = this.units === "m" ? texts : texts.reverse();
    return markup`<data value="${String(value)}" data-from="${pointer}"${titled(more)}>${first!} (${second!})</data>`;
  }
}

/** Two wordings, one for each system of units; the style shows the reader's. */
export function inUnits(metric: Content, imperial: Content): Markup {
  return markup`<span class="m">${metric}</span><span class="ft">${imperial}</span>`;
}

function titled({ title }: FigureMore): Content {
  return title === undefined ? null : markup` title="${title}"`;
}

function none(more: FigureMore): Markup {
  return markup`<span class="none">${more.none ?? "none"}</span>`;
}

/** With the minus that typography has. */
function signed(text: string): string {
  return text.replace(/^-/, "−");
}
