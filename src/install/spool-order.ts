import { requireNonNegative, requirePositive } from "../issues/index.js";
import { SLACK } from "../units/index.js";

/** Pieces to be cut from whole spools. */
export interface SpoolOrder {
  readonly pieceCount: number;
  /** Sum of the pieces, m. */
  readonly lengthM: number;
  /** With the waste, m. */
  readonly orderM: number;
  readonly spoolM: number | null;
  /** Null: ordered by the metre. */
  readonly spoolCount: number | null;
  /** Pieces that no spool is long enough for: ordered on their own, and in no spool's count. */
  readonly tooLongCount: number;
}

/**
 * How much to order so that every piece is cut whole: never joined. Spools are filled longest piece first; their
 * number is at least the length with its waste over a spool's length.
 * @param piecesM lengths to cut, m, each ≥ 0
 * @param wasteRatio share on top, ≥ 0
 * @param spoolM length on a spool, m; null: ordered by the metre
 * @throws {ArgumentError} when a length or the waste is not such a number
 * @source first-fit decreasing, at most 11/9 of the fewest spools and a part of one (Johnson 1973, from memory)
 * @example spoolOrder([4, 4, 4], 0.1, 10).spoolCount; // => 2
 */
export function spoolOrder(
  piecesM: readonly number[],
  wasteRatio: number,
  spoolM: number | null,
): SpoolOrder {
  piecesM.forEach((pieceM, index) => requireNonNegative(`piecesM[${index}]`, pieceM));
  requireNonNegative("wasteRatio", wasteRatio);
  if (spoolM !== null) requirePositive("spoolM", spoolM);
  const lengthM = piecesM.reduce((sumM, pieceM) => sumM + pieceM, 0);
  const order = { pieceCount: piecesM.length, lengthM, orderM: lengthM * (1 + wasteRatio), spoolM };
  if (spoolM === null) return { ...order, spoolCount: null, tooLongCount: 0 };
  const fitting = piecesM.filter((pieceM) => pieceM <= spoolM + SLACK);
  const fittingM = fitting.reduce((sumM, pieceM) => sumM + pieceM, 0);
  const byLength = Math.ceil((fittingM * (1 + wasteRatio)) / spoolM - SLACK);
  const spoolCount = Math.max(byLength, firstFit(fitting, spoolM));
  return { ...order, spoolCount, tooLongCount: piecesM.length - fitting.length };
}

function firstFit(piecesM: readonly number[], spoolM: number): number {
  const leftM: number[] = [];
  for (const pieceM of piecesM.filter((lengthM) => lengthM > 0).sort((a, b) => b - a)) {
    const index = leftM.findIndex((restM) => restM + SLACK >= pieceM);
    if (index < 0) leftM.push(spoolM - pieceM);
    else leftM[index]! -= pieceM;
  }
  return leftM.length;
}
