import { parseNumber } from "../units/index.js";
import { parseBssid } from "./bssid.js";
import { parseCrowd } from "./crowd.js";
import type { Delimiter } from "./delimiter.js";
import { parseIsoTime } from "./iso-time.js";
import { memo } from "./memo.js";
import type { Crowd, WifiStandard } from "./reading.js";
import { unguardCell } from "./spreadsheet-guard.js";
import { wifiStandard } from "./wifi-standard.js";

/** How the cells of one file are read; null where a text is not what it should be. */
export interface ScanCsvParsers {
  readonly number: (text: string) => number | null;
  readonly time: (text: string) => number | null;
  readonly crowd: (text: string) => Crowd | null;
  readonly bssid: (text: string) => string | null;
  /** Blanks around a place's name are not part of it. */
  readonly place: (text: string) => string;
  /** A network's name is taken as it stands, but for the guard against spreadsheets. */
  readonly ssid: (text: string) => string;
  readonly standard: (text: string) => WifiStandard;
}

/** @returns the parsers of a file with this delimiter: a decimal comma counts where it isn't the delimiter */
export function scanCsvParsers(delimiter: Delimiter): ScanCsvParsers {
  return {
    number: memo((text) => parseNumber(text, delimiter !== ",")),
    time: memo(parseIsoTime),
    crowd: memo(parseCrowd),
    bssid: memo(parseBssid),
    place: memo((text) => unguardCell(text.trim())),
    ssid: memo(unguardCell),
    standard: memo(wifiStandard),
  };
}
