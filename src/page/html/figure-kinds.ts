import {
  exactPercent,
  fixed,
  lengthCell,
  lengthText,
  lossPercent,
  orderWords,
  reachLengths,
  sharePercent,
  weightWords,
  wholePercent,
} from "../../report/index.js";

const plain = (placeCount: number, unit: string) => (value: number) =>
  `${fixed(value, placeCount)}${unit === "" ? "" : ` ${unit}`}`;

/** Every way in which the page rounds a number, by name; the text is what the terminal's reports say. */
export const FIGURE_TEXTS = {
  /** Decibels of any sort, to a tenth. */
  tenth: plain(1, ""),
  dB: plain(1, "dB"),
  /** What something costs, never rounded to nothing. */
  cost: (value: number) => (value < 0.05 ? "under 0.1 dB" : `${fixed(value, 1)} dB`),
  dBm: plain(1, "dBm"),
  dBi: plain(1, "dBi"),
  wholeDbm: plain(0, "dBm"),
  count: plain(0, ""),
  asIs: (value: number) => String(value),
  mhz: (value: number) => `${value} MHz`,
  amps: plain(1, "A"),
  volts: plain(0, "V"),
  lostVolts: plain(2, "V"),
  watts: plain(0, "W"),
  milliseconds: (value: number) => `${fixed(value / 1000, 2)} ms`,
  aSecond: (value: number) => `${String(Math.floor(value))}/s`,
  minutes: plain(0, "min"),
  share: sharePercent,
  lost: lossPercent,
  whole: wholePercent,
  exact: exactPercent,
  drop: (value: number) => `${fixed(value * 100, 2)} %`,
} as const satisfies Readonly<Record<string, (value: number) => string>>;

/** Those that have a text for each system of units. */
export const LENGTH_TEXTS = {
  /** To a tenth. */
  distance: [(value: number) => lengthText(value, "m"), (value: number) => lengthText(value, "ft")],
  /** To a millimetre or an eighth of an inch, under a head that names the unit. */
  cut: [(value: number) => lengthCell(value, "m"), (value: number) => lengthCell(value, "ft")],
  /** Whole, never rounded up. */
  reach: [
    (value: number) => first(reachLengths(value, "m")),
    (value: number) => first(reachLengths(value, "ft")),
  ],
  order: [(value: number) => orderWords(value, "m"), (value: number) => orderWords(value, "ft")],
  weight: [(value: number) => weightWords(value, "m"), (value: number) => weightWords(value, "ft")],
} as const satisfies Readonly<Record<string, readonly [Said, Said]>>;

/** The first of two lengths. */
function first(lengths: string): string {
  return lengths.replace(/ \(.*$/, "");
}

type Said = (value: number) => string;

export type FigureText = keyof typeof FIGURE_TEXTS;
export type LengthText = keyof typeof LENGTH_TEXTS;
