import type { PatchPlan } from "../venue/index.js";
import { carriedWords } from "./patch-conflict-lines.js";
import { countOf, nameOf } from "./patch-words.js";
import type { TextStyle } from "./pen.js";
import { tableLines } from "./text-layout.js";

/** How full each universe is and how long a packet of it takes. */
export function universeTable({ addresses, refresh }: PatchPlan, style: TextStyle): string[] {
  const rows = addresses.universes.map((use) => {
    const frame = refresh.universes.find(({ universe }) => universe === use.universe)?.frame;
    return [
      String(use.universe),
      String(use.usedSlotCount),
      String(use.spareSlotCount),
      String(use.reservedSlotCount),
      String(use.freeSlotCount),
      String(use.lastUsedSlot),
      frame === undefined ? "" : `${(frame.frameUs / 1000).toFixed(2)} ms`,
      frame === undefined ? "" : `${Math.floor(frame.rateHz)}/s`,
      use.systems.length === 0 ? "no system" : use.systems.map(nameOf).join(", "),
    ];
  });
  const heads = ["universe", "used", "spare", "reserved", "free", "sent to", "frame", "rate"];
  return tableLines(
    [
      ...heads.map((head) => ({ head, align: "right" as const })),
      { head: "carried by", align: "left" as const },
    ],
    rows,
    style.columnCount,
  );
}

/** The fewest universes, where the order is free. */
export function fewestLines({ addresses, systems }: PatchPlan): string[] {
  return addresses.fewest.map(({ systems: names, universeCount, lowerBoundCount, proved }) => {
    const carrier = systems.find(({ name }) => names.includes(name));
    const carries =
      carrier === undefined ? "" : ` (carries ${carriedWords(carrier.universe, carrier.universeCount)})`;
    const bound = proved ? "proved: no patch needs fewer" : `not proved: at least ${lowerBoundCount}`;
    return `${names.map(nameOf).join(", ")}: ${countOf(universeCount, "universe")}, ${bound}${carries}.`;
  });
}
