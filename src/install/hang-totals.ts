import type { HangRow, SuspensionTotal } from "./hang-sheet-types.js";
import { spoolOrder } from "./spool-order.js";

/**
 * Chain, rope and stem by kind and step. Only chain and rope come on spools.
 * @param wasteRatio on top of what is cut, 0..1
 * @param chainSpoolM chain on a spool, m; null: not known
 * @example suspensionTotals([], 0.1, null); // => []
 */
export function suspensionTotals(
  rows: readonly HangRow[],
  wasteRatio: number,
  chainSpoolM: number | null,
): SuspensionTotal[] {
  const hung = rows.filter(({ suspensionM }) => suspensionM !== null);
  return bySuspension(hung).map((own) => {
    const { suspension, stepM } = own[0]!;
    const lengthsM = own.map(({ suspensionM }) => suspensionM!);
    return {
      suspension,
      stepM,
      stepCount: stepM === null ? null : own.reduce((count, { stepCount }) => count + stepCount!, 0),
      order: spoolOrder(lengthsM, wasteRatio, suspension === "stem" ? null : chainSpoolM),
    };
  });
}

/** Rows by kind and step, told apart to the micrometre, in whatever unit the step was typed. */
export function bySuspension(rows: readonly HangRow[]): HangRow[][] {
  const kinds = new Map<string, HangRow[]>();
  for (const row of rows) {
    const key = `${row.suspension} ${row.stepM === null ? "" : Math.round(row.stepM * 1e6)}`;
    kinds.set(key, [...(kinds.get(key) ?? []), row]);
  }
  return [...kinds.values()];
}
