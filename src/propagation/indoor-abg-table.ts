import { ArgumentError } from "../issues/index.js";
import type { Figure } from "../radio/index.js";

/** Kinds of place in ITU-R P.1238-11. */
export type IndoorPlace = "office" | "corridor" | "industrial";

/** With or without line of sight between the antennas. */
export type IndoorSight = "LoS" | "NLoS";

/** One row of the table, with its origin. */
export interface IndoorAbgRow extends Pick<Figure, "status" | "source"> {
  /** α: the loss grows by 10·α dB per tenfold distance. */
  readonly alpha: number;
  readonly betaDb: number;
  /** γ: the loss grows by 10·γ dB per tenfold frequency. */
  readonly gamma: number;
  /** Standard deviation of the shadowing about the median, dB; not in the loss. */
  readonly sigmaDb: number;
  /** [lowest, highest] MHz that the row was fitted over. */
  readonly frequencyRangeMhz: readonly [number, number];
  /** [shortest, longest] m that the row was fitted over. */
  readonly distanceRangeM: readonly [number, number];
}

/**
 * Rows of the α-β-γ form by place and sight. None has been published for theatres, arenas or auditoria.
 * @source ITU-R P.1238-11 Table 2, read in the open library octave-rxt
 * @example indoorAbgRows.industrial.LoS.sigmaDb; // => 2.69
 */
export const indoorAbgRows: Readonly<Record<IndoorPlace, Readonly<Record<IndoorSight, IndoorAbgRow>>>> = {
  office: {
    LoS: row([1.46, 34.62, 2.03], 3.76, [300, 83_500], [2, 27]),
    NLoS: row([2.46, 29.53, 2.38], 5.04, [300, 82_000], [4, 30]),
  },
  corridor: {
    LoS: row([1.63, 28.12, 2.25], 4.07, [300, 83_500], [2, 160]),
    NLoS: row([2.77, 29.27, 2.48], 7.63, [625, 83_500], [4, 94]),
  },
  industrial: {
    LoS: row([2.31, 24.52, 2.06], 2.69, [625, 70_280], [2, 101]),
    NLoS: row([3.79, 21.01, 1.34], 9.05, [625, 70_280], [5, 108]),
  },
};

/**
 * The row of a place and sight.
 * @throws {ArgumentError} for an unknown place or sight
 * @example indoorAbgRow("office", "LoS").distanceRangeM; // => [2, 27]
 */
export function indoorAbgRow(place: IndoorPlace, sight: IndoorSight): IndoorAbgRow {
  if (!Object.hasOwn(indoorAbgRows, place))
    throw new ArgumentError("place", Object.keys(indoorAbgRows).join(", "), place);
  const bySight = indoorAbgRows[place];
  if (!Object.hasOwn(bySight, sight)) throw new ArgumentError("sight", "LoS or NLoS", sight);
  return bySight[sight];
}

function row(
  [alpha, betaDb, gamma]: readonly [number, number, number],
  sigmaDb: number,
  frequencyRangeMhz: readonly [number, number],
  distanceRangeM: readonly [number, number],
): IndoorAbgRow {
  const source = "ITU-R P.1238-11 Table 2, read in the open library octave-rxt";
  return { alpha, betaDb, gamma, sigmaDb, frequencyRangeMhz, distanceRangeM, status: "standard", source };
}
