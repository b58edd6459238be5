/** How full the room was when it was scanned. */
export type Crowd = "empty" | "part" | "full";

/** Letters of the IEEE 802.11 amendments, oldest first; `unknown` where the scan doesn't say. */
export type WifiStandard = "unknown" | "b" | "g" | "a" | "n" | "ac" | "ax" | "be";

/** Oldest first: of two rows that disagree, the newer standard is believed. */
export const STANDARDS: readonly WifiStandard[] = ["unknown", "b", "a", "g", "n", "ac", "ax", "be"];

/** One reading of one BSSID: a row of a beacon list that was understood and lies in 2400–2500 MHz. */
export interface Reading {
  /** File name as given. */
  readonly source: string;
  /** 1-based physical line where the row starts. */
  readonly line: number;
  /** Time stamp, ms since 1970 UTC; a stamp without a zone counts as UTC. Null: blank. */
  readonly timeMs: number | null;
  /** Empty: not named. */
  readonly place: string;
  /** Null: blank (counts as part where a crowd is needed). */
  readonly crowd: Crowd | null;
  /** Lower case, colons. Null: the format has no addresses. */
  readonly bssid: string | null;
  /** Empty: hidden. */
  readonly ssid: string;
  /** Primary Wi-Fi channel, 1..14. */
  readonly channel: number;
  /** Centre of the occupied width, MHz. */
  readonly centreMhz: number;
  /** 20 or 40. */
  readonly widthMhz: 20 | 40;
  readonly signalDbm: number;
  /** The signal came as a percentage and was converted. */
  readonly signalAssumed: boolean;
  /** A 40 MHz row that did not say on which side its secondary channel is. */
  readonly centreAssumed: boolean;
  /** BSS Load utilisation, 0..1. Null: not reported. */
  readonly airtimeRatio: number | null;
  readonly stationCount: number | null;
  readonly standard: WifiStandard;
  /** How long before the scan it was last heard, ms. Null: the format doesn't say. */
  readonly ageMs: number | null;
}
