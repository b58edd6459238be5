import type { WifiStandard } from "./reading.js";

const STANDARDS: ReadonlySet<string> = new Set(["b", "g", "a", "n", "ac", "ax", "be"]);

/**
 * @param text amendment letters, as `n` or `ax`
 * @returns the standard; `unknown` for anything else
 * @example wifiStandard("AX"); // => "ax"
 */
export function wifiStandard(text: string): WifiStandard {
  const letters = text.trim().toLowerCase();
  return STANDARDS.has(letters) ? (letters as WifiStandard) : "unknown";
}
