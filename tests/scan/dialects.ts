import { readFileSync } from "node:fs";
import { readScan } from "../../src/scan/read-scan.js";
import type { ReadScanOptions, ScanImport, ScanInput } from "../../src/scan/scan-import.js";

/** @returns the bytes of a file in fixtures/scans/dialects */
export function dialect(name: string): Uint8Array {
  return readFileSync(new URL(`../../fixtures/scans/dialects/${name}`, import.meta.url));
}

export function read(input: ScanInput, options: Partial<ReadScanOptions> = {}): Promise<ScanImport> {
  return readScan(input, { source: "scan", ...options });
}

/** What the rows say, without where they stood. */
export function facts({ readings }: ScanImport): unknown[] {
  return readings.map((reading) => ({ ...reading, source: "", line: 0 }));
}

/** A scan CSV of one row: columns by name. */
export function oneRow(cells: Readonly<Record<string, string>>, delimiter = ","): string {
  const row = { bssid: "02:1a:00:00:00:01", channel: "6", signal_dbm: "-60", ...cells };
  return `${Object.keys(row).join(delimiter)}\n${Object.values(row).join(delimiter)}\n`;
}

/** Rows in = used + rejected + out of band; no usable row is said, and only then. */
export function accounts(result: ScanImport): boolean {
  const { readings, rowCount, rejectedCount, outOfBandCount, issues } = result;
  const says = issues.some(({ code }) => code === "no-usable-row");
  return rowCount === readings.length + rejectedCount + outOfBandCount && says === (readings.length === 0);
}
