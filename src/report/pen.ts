/** How a report is drawn: the caller decides whether marks become colours, tags or nothing. */
export interface Pen {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
}

/** No marks at all: a pipe, a file, NO_COLOR. */
export const plainPen: Pen = { strong: (text) => text, faint: (text) => text };

/** What every text report needs to know of its reader. */
export interface TextStyle {
  readonly pen: Pen;
  readonly units: LengthUnit;
  /** Columns to fill, 80 unless the terminal is wider. */
  readonly columnCount: number;
}

export type LengthUnit = "m" | "ft";
