import type { IwBlock } from "./iw-block.js";
import type { WifiStandard } from "./reading.js";

/** Mb/s. @source IEEE 802.11-2020 clause 17.2.3, from memory */
const OFDM_RATES: ReadonlySet<string> = new Set([
  "6.0",
  "9.0",
  "12.0",
  "18.0",
  "24.0",
  "36.0",
  "48.0",
  "54.0",
]);

/**
 * The newest standard of which a BSS block shows an element: EHT → be, HE → ax, HT → n; without those,
 * any OFDM rate → g, else b.
 */
export function iwStandard(block: IwBlock): WifiStandard {
  const shows = (prefix: string): boolean =>
    block.has(`${prefix} capabilities`) || block.has(`${prefix} operation`);
  if (shows("eht")) return "be";
  if (shows("he")) return "ax";
  if (shows("ht")) return "n";
  const rates = `${block.get("supported rates") ?? ""} ${block.get("extended supported rates") ?? ""}`;
  return rates.split(/[* ]+/).some((rate) => OFDM_RATES.has(rate)) ? "g" : "b";
}
