import type { Issue } from "../issues/index.js";
import type { Reading } from "./reading.js";

/**
 * One scan file, read. Rows in = used + rejected + out of band, always:
 * `rowCount === readings.length + rejectedCount + outOfBandCount`.
 */
export interface ScanImport {
  readonly source: string;
  /** What the content turned out to be; `unknown` has no row. */
  readonly format: "scan-csv" | "linux-iw-scan" | "unknown";
  /** Does the format say how long ago each source was heard? */
  readonly hasAges: boolean;
  readonly readings: readonly Reading[];
  readonly rowCount: number;
  readonly rejectedCount: number;
  /** Rows outside 2400–2500 MHz (5 and 6 GHz Wi-Fi among them). */
  readonly outOfBandCount: number;
  readonly issues: readonly Issue[];
}

/** What `readScan` is told besides the bytes. */
export interface ReadScanOptions {
  /** File name for messages. */
  readonly source: string;
  /** Fill for blank cells. */
  readonly place?: string;
  readonly crowd?: "empty" | "part" | "full";
  /** ISO 8601. */
  readonly time?: string;
}

/** Text, bytes, or chunks of either as they arrive. */
export type ScanInput =
  string | Uint8Array | Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>;
