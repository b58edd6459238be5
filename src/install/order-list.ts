import { requireNonNegative } from "../issues/index.js";
import { requireDistinct } from "./hang-requirements.js";
import { feedOf, orderLengths } from "./order-lengths.js";
import { orderPieces } from "./order-pieces.js";
import type { OrderGap, OrderList, OrderOptions } from "./order-types.js";

/**
 * The order list of a venue: radio parts, cables and hardware by the piece with spares in whole units (of each
 * radio part at least one), chain, safety cable and cord by the length with the hang sheet's waste. Every line
 * names the rows that need it, and what can't be ordered yet is told.
 * @param options the venue's systems and receivers, its hang sheet and its circuit sheet
 * @throws {ArgumentError} when two systems or receivers have one name or the spare share is not ≥ 0
 * @source what each row takes (two hooks a chain, a cable from luminaire to luminaire): common practice, no source;
 *   the last device of a wired line is terminated: ANSI E1.11
 * @example
 * const points = [{ name: "P1", room: "loft", ceilingHeightM: 8, trimHeightM: 6, weightKg: 9 }];
 * const luminaires = [{ name: "P1", room: "loft", circuit: "A", watts: 90 }];
 * const receivers = [{ name: "R1", system: "loft", luminaires: ["P1"] }];
 * const parts = { systems: [{ name: "loft" }], receivers };
 * const { lines } = orderList({ ...parts, hang: hangSheet({ points }), circuits: circuitSheet({ luminaires }) });
 * lines.find(({ item }) => item === "receiver").orderCount; // => 2
 */
export function orderList(options: OrderOptions): OrderList {
  const { systems, receivers, hang, spareRatio = SPARE_RATIO } = options;
  requireNonNegative("spareRatio", spareRatio);
  requireDistinct("systems", systems);
  requireDistinct("receivers", receivers);
  return {
    lines: [...orderPieces(options, spareRatio), ...orderLengths(options)],
    gaps: orderGaps(options),
    ...{ spareRatio, wasteRatio: hang.wasteRatio },
  };
}

/** Assumed. */
const SPARE_RATIO = 0.1;

function orderGaps({ hang, circuits, receivers }: OrderOptions): OrderGap[] {
  const served = new Set(receivers.flatMap(({ luminaires }) => luminaires));
  return hang.rows.flatMap(({ name, suspensionM, safetyM, cord }) => {
    const { conductor, feedM } = feedOf(name, circuits);
    const gaps: readonly (readonly [OrderGap["item"], boolean])[] = [
      ["receiver", !served.has(name)],
      ["suspension", suspensionM === null],
      ["safety-cable", safetyM === null],
      ["cord", cord === null && feedM === null],
      ["conductor", conductor === null],
    ];
    return gaps.flatMap(([item, stands]) => (stands ? [{ item, name }] : []));
  });
}
