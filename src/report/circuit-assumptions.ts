import type { CordConductor, WireOrigin } from "../install/index.js";
import type { HangReport } from "./hang-report.js";
import { exactPercent } from "./number-format.js";

/** What the circuit sheet rests on, one statement a line. */
export function circuitAssumptions({ plan, options }: HangReport): string[] {
  const { circuits, sizes } = plan;
  const { rows, continuousFactorRatio, continuousFactorStatus, mostDropRatio, loadedCount } = circuits;
  const factor = {
    region: "the region's: 125 % for a continuous load in US and CA, from memory",
    given: "as given (--continuous-factor)",
    "not-given": "none is given: ask by local code (--continuous-factor; 1.25 in US and CA)",
  }[continuousFactorStatus];
  return [
    `counted = load x ${continuousFactorRatio}, the continuous-load factor, ${factor}.`,
    `load = watts / volts / power factor${circuits.powerFactorAssumed ? "; power factor 0.9 where none is given, assumed (--power-factor, or power_factor in a row)" : ""}. Single phase.`,
    "The conductor is sized to the breaker, not to the load alone; it is never thinner than its use asks: 16 AWG from its own box, 14 AWG and earth where fed through from fixture to fixture (common practice, no source; in mm² the next size with at least that area).",
    `Voltage drop up to ${exactPercent(mostDropRatio)} (--drop-share${options.mostDropRatio === undefined ? ", advisory: NEC 210.19(A), read second-hand" : ""}), there and back, exact for loads along a run; what is lost before the first box counts where it is given (upstream_drop). Copper at 75 °C.`,
    "Cord of a through-fed run: up along the luminaire before it, straight across the ceiling by the plan, down along its own; the run follows the rows of the venue file. feed_length in a row is what was measured, and holds.",
    `Ampacity with ${loadedCount} loaded conductors at 30 °C, not bundled, not covered. ${tableWords(rows, loadedCount)}`,
    `Sizes in ${sizes === "awg" ? "AWG" : "mm²"} (--sizes). How many drivers a breaker stands at switch-on only the maker's inrush table says (drivers_allowed).`,
  ];
}

/** The tables behind the conductors that were chosen. */
function tableWords(rows: HangReport["plan"]["circuits"]["rows"], loadedCount: 2 | 3): string {
  const chosen = rows.flatMap(({ choice }) => choice.conductor ?? []);
  const origins = chosen.flatMap((conductor) => [
    ampacityOrigin(conductor, loadedCount),
    conductor.resistanceOrigin,
  ]);
  const words = [...new Set(origins.map(({ source, status }) => `${source} (${status})`))];
  return words.length === 0 ? "No conductor is chosen." : `Tables: ${words.join("; ")}.`;
}

function ampacityOrigin(conductor: CordConductor, loadedCount: 2 | 3): WireOrigin {
  return loadedCount === 3 || conductor.twoLoadedA === null
    ? conductor.threeLoadedOrigin
    : conductor.twoLoadedOrigin;
}
