import type { CircuitSheet } from "./circuit-types.js";
import type { HangRow } from "./hang-sheet-types.js";
import { bySuspension } from "./hang-totals.js";
import type { LengthItem, LengthLine, LengthNeed, OrderOptions } from "./order-types.js";
import { spoolOrder } from "./spool-order.js";

/** Lines by the length: chain, rope and stem by kind and step, safety cable, cord by conductor. */
export function orderLengths({ hang, circuits, cordSpoolM = null }: OrderOptions): LengthLine[] {
  const { rows, wasteRatio } = hang;
  const line = (
    item: LengthItem,
    needs: readonly LengthNeed[],
    more: { spoolM: number | null; conductor?: string | null; stepM?: number | null },
  ): LengthLine => {
    const lengthsM = needs.map(({ lengthM }) => lengthM);
    const { conductor = null, stepM = null, spoolM } = more;
    return {
      kind: "lengths",
      item,
      conductor,
      stepM,
      order: spoolOrder(lengthsM, wasteRatio, spoolM),
      needs,
    };
  };
  const hung = rows.filter(({ suspensionM }) => suspensionM !== null);
  const suspensions = bySuspension(hung).map((own) => {
    const { suspension, stepM } = own[0]!;
    const total = hang.suspensions.find((one) => one.suspension === suspension && one.stepM === stepM);
    const needs = own.map(({ name, suspensionM }) => ({ name, lengthM: suspensionM! }));
    return line(suspension, needs, { spoolM: total?.order.spoolM ?? null, stepM });
  });
  const safeties = rows.flatMap(({ name, safetyM }) => (safetyM === null ? [] : { name, lengthM: safetyM }));
  const cords = cordsByConductor(rows, circuits).map(({ conductor, needs }) =>
    line("cord", needs, { spoolM: cordSpoolM, conductor }),
  );
  const safety = safeties.length > 0 ? [line("safety-cable", safeties, { spoolM: hang.safety.spoolM })] : [];
  return [...suspensions, ...safety, ...cords];
}

/** The conductor that the circuit sheet chose for a luminaire, and the cord to it where that is stated. */
export function feedOf(
  name: string,
  { rows }: CircuitSheet,
): { readonly conductor: string | null; readonly feedM: number | null } {
  const row = rows.find(({ luminaires }) => luminaires.includes(name));
  const feedM = row?.feedsM[row.luminaires.indexOf(name)] ?? null;
  return { conductor: row?.choice.conductor?.name ?? null, feedM };
}

/** A stated feed is the cord; else the hang sheet's, from the luminaire's own box. Undecided gauges come last. */
function cordsByConductor(
  rows: readonly HangRow[],
  circuits: CircuitSheet,
): { conductor: string | null; needs: LengthNeed[] }[] {
  const byConductor = new Map<string | null, LengthNeed[]>();
  for (const { name, cord } of rows) {
    const { conductor, feedM } = feedOf(name, circuits);
    const lengthM = feedM ?? cord?.lengthM ?? null;
    if (lengthM !== null)
      byConductor.set(conductor, [...(byConductor.get(conductor) ?? []), { name, lengthM }]);
  }
  const undecided = byConductor.get(null);
  byConductor.delete(null);
  if (undecided !== undefined) byConductor.set(null, undecided);
  return [...byConductor].map(([conductor, needs]) => ({ conductor, needs }));
}
