import { printable } from "../issues/index.js";
import type { SystemRequest } from "../venue/index.js";
import { dB } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { tableLines, wrapped } from "./text-layout.js";

/** What the request is worth to each system. */
export function requestWorthTable(systems: readonly SystemRequest[], style: TextStyle): string[] {
  const rows = systems.map((one) => [
    printable(one.system, 20),
    one.channel === null ? "hops" : String(one.channel),
    ...(one.reason === null
      ? [one.workingMarginDb, one.ifWifiMovesDb, one.ifGrantedDb, one.ifOffDb].map((marginDb) => dB(marginDb))
      : ["none", "none", "none", "none"]),
  ]);
  const heads = ["system", "radio ch", "to spare now", "if Wi-Fi moves", "granted", "and 2.4 GHz off"];
  const reasons = systems.flatMap(({ system, reason }) =>
    reason === null
      ? []
      : wrapped(`${printable(system, 20)}: no margins here; ${reason}.`, style.columnCount),
  );
  return [
    ...tableLines(
      heads.map((head, index) => ({ head, align: index === 0 ? "left" : "right" })),
      rows,
      style.columnCount,
    ),
    ...reasons,
  ];
}
