import type { Fault } from "./fault.js";
import type { Fill } from "./fill.js";
import { parseOsAddress } from "./os-text-address.js";
import { readOsTextRow } from "./os-text-row.js";
import type { OsTextRow, SignalRule } from "./os-text-row.js";
import { LONGEST_RECORD_COUNT } from "./scan-limits.js";
import type { ScanTally } from "./scan-tally.js";

/** Takes the rows of one operating system's text into a tally, and says at the end what was taken as read. */
export class OsTextSink {
  private recordCount = 0;
  private maskedCount = 0;
  private firstMaskedLine = 0;
  private qualityCount = 0;

  constructor(
    private readonly fill: Fill,
    private readonly tally: ScanTally,
    private readonly rule: SignalRule,
  ) {}

  add(row: OsTextRow): void {
    const result = readOsTextRow(row, this.rule, this.fill);
    this.recordCount++;
    if (result === "out of band") return this.tally.outOfBand();
    if ("code" in result) return this.tally.reject(result, row.line, this.recordCount);
    if (row.address !== null && parseOsAddress(row.address)?.bssid === null) {
      this.maskedCount++;
      this.firstMaskedLine ||= row.line;
    }
    if (result.signalAssumed) this.qualityCount++;
    this.tally.use(result);
  }

  reject(fault: Fault, line: number): void {
    this.tally.reject(fault, line, ++this.recordCount);
  }

  /** A line is longer than is read. */
  stop(line: number): void {
    const expected = `a line of at most ${LONGEST_RECORD_COUNT} characters`;
    this.tally.say({ code: "limit", severity: "error", line, expected, action: "stopped" });
  }

  finish(): void {
    sayMasked(this.tally, this.maskedCount, this.firstMaskedLine);
    if (this.qualityCount > 0)
      this.tally.say({
        code: "assumed",
        severity: "note",
        expected: `signals in percent, taken as percent/2 − 100 dBm (common practice): ${rows(this.qualityCount)}`,
        action: "stated",
      });
  }
}

/** Says that addresses were masked, so that radios are told apart by name and channel. */
export function sayMasked(tally: ScanTally, maskedCount: number, line: number): void {
  if (maskedCount === 0) return;
  const expected =
    `masked addresses, which several radios may share: ${rows(maskedCount)} told apart by` +
    " name and channel alone";
  tally.say({ code: "assumed", severity: "note", line, expected, action: "stated" });
}

function rows(count: number): string {
  return count === 1 ? "1 row" : `${count} rows`;
}
