import { addressCell } from "./column-address.js";
import { networkName } from "./column-name.js";
import { cellNumber, isBlankSign } from "./column-number.js";
import type { CellNumber } from "./column-number.js";
import type { TablePlan } from "./column-plan.js";
import { parseCrowd } from "./crowd.js";
import { parseIsoTime } from "./iso-time.js";
import { memo } from "./memo.js";
import type { WifiStandard } from "./reading.js";
import type { ScanCsvParsers } from "./scan-csv-parsers.js";
import { unguardCell } from "./spreadsheet-guard.js";
import { wifiStandard } from "./wifi-standard.js";

/** How the cells of a foreign table are read. */
export interface ColumnParsers extends ScanCsvParsers {
  readonly unitNumber: (text: string) => CellNumber | null;
  readonly isMasked: (text: string) => boolean;
  readonly isBlank: (text: string) => boolean;
}

/** @returns the parsers of a planned table */
export function columnParsers({ decimalComma, timeStyle, isPadded }: TablePlan): ColumnParsers {
  const unitNumber = memo((text) => cellNumber(text, decimalComma));
  return {
    unitNumber,
    isMasked: memo((text) => addressCell(text).kind === "masked"),
    number: (text) => unitNumber(text)?.value ?? null,
    time: memo((text) => (timeStyle === null ? parseIsoTime(text) : timeStyle.parse(text))),
    crowd: memo(parseCrowd),
    bssid: memo((text) => {
      const cell = addressCell(text);
      return cell.kind === "address" ? cell.bssid : null;
    }),
    place: memo((text) => unguardCell(text.trim())),
    ssid: memo((text) => networkName(isPadded ? unpadded(text) : text)),
    isBlank: memo(isBlankSign),
    standard: memo(standardOf),
  };
}

/** A name without the blanks around it, and the quotes that these kept from being such. */
function unpadded(text: string): string {
  const trimmed = text.trim();
  return /^"[^"]*"$/.test(trimmed) ? trimmed.slice(1, -1) : trimmed;
}

/** Wi-Fi generations by number. @source Wi-Fi generation names 4 to 7: n, ac, ax, be, from memory */
const GENERATIONS: readonly WifiStandard[] = ["n", "ac", "ax", "be"];

/**
 * The newest amendment that a cell names, as `n`, `802.11ax`, `bgn` or `Wi-Fi 6`.
 * @example standardOf("802.11ax"); // => "ax"
 */
export function standardOf(text: string): WifiStandard {
  const lower = text.trim().toLowerCase();
  const generation = /^wi-?fi ?([4-7])e?$/.exec(lower)?.[1];
  if (generation !== undefined) return GENERATIONS[Number(generation) - 4]!;
  const letters = lower.replace(/^(?:ieee ?)?802\.11[ /-]?/, "");
  const plain = wifiStandard(letters);
  if (plain !== "unknown") return plain;
  if (!/^(?:be|ax|ac|[abgn]|[/, +-])+$/.test(letters)) return "unknown";
  const newest = ["be", "ax", "ac", "n", "g", "a", "b"].find((amendment) => letters.includes(amendment));
  return newest === undefined ? "unknown" : wifiStandard(newest);
}
