import type { Issue, LongWork } from "../issues/index.js";
import type { OsTextFormat } from "./os-text-command.js";
import type { Reading } from "./reading.js";
import type { Sweep, SweepReceiver } from "./sweep.js";

/**
 * One scan file, read. Rows in = used + rejected + out of band, always:
 * `rowCount === readings.length + (sweep?.usedRowCount ?? 0) + rejectedCount + outOfBandCount`.
 */
export interface ScanImport {
  readonly source: string;
  /** What the content turned out to be; `unknown` has no row. */
  readonly format: "scan-csv" | OsTextFormat | "power-sweep" | "unknown";
  /** Does the format say how long ago each source was heard? */
  readonly hasAges: boolean;
  readonly readings: readonly Reading[];
  /** What a power sweep holds; null for a beacon list, or a sweep without a usable row. */
  readonly sweep: Sweep | null;
  readonly rowCount: number;
  readonly rejectedCount: number;
  /** Rows outside 2400–2500 MHz (5 and 6 GHz Wi-Fi among them). */
  readonly outOfBandCount: number;
  readonly issues: readonly Issue[];
  /** Wi-Fi channel by address, where the file is a list of these without levels; above 14 out of band. */
  readonly channels?: ReadonlyMap<string, number>;
  /** The file has levels by address but no channels: to be read again with such a list. */
  readonly needsChannels?: boolean;
}

/** What `readScan` is told besides the bytes. */
export interface ReadScanOptions extends LongWork {
  /** File name for messages. */
  readonly source: string;
  /** Fill for blank cells. */
  readonly place?: string;
  readonly crowd?: "empty" | "part" | "full";
  /** ISO 8601. */
  readonly time?: string;
  /** The header of a column of a scan CSV where it can't be guessed, as `{ signal_dbm: "Pegel" }`. */
  readonly columns?: Readonly<Record<string, string>>;
  /** Wi-Fi channel by address, for tables that have levels only: the `channels` of another file's import. */
  readonly channels?: ReadonlyMap<string, number>;
  /** The receiver for whose channels a power sweep is summed; that of `raster-13` unless given. */
  readonly sweepReceiver?: SweepReceiver;
  /** Of a power sweep, MHz; the width or spacing of its bins, marked assumed, unless given. */
  readonly resolutionBandwidthMhz?: number;
}

/** A Web stream of bytes or text, as far as it is used: `ReadableStream` is one. */
export interface ByteStream {
  getReader(): {
    read(): Promise<{ readonly done: boolean; readonly value?: string | Uint8Array | undefined }>;
    cancel(): Promise<unknown>;
  };
}

/** Text, bytes, or chunks of either as they arrive: from any iterable, async or not, or a Web stream. */
export type ScanInput =
  string | Uint8Array | Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array> | ByteStream;
