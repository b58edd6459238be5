import type { Issue } from "../issues/index.js";
import type { Fault } from "./fault.js";
import { IssueLog } from "./issue-log.js";
import type { Reading } from "./reading.js";

/** Counts the rows of one file as they are read: each is used, rejected with an issue, or out of band. */
export class ScanTally {
  readings: Reading[] = [];
  rejectedCount = 0;
  outOfBandCount = 0;
  /** Wi-Fi channel by address, of a list without levels. */
  readonly channels = new Map<string, number>();
  /** Readings wait for such a list from another file. */
  needsChannels = false;
  private readonly log = new IssueLog();

  constructor(readonly source: string) {}

  get rowCount(): number {
    return this.readings.length + this.rejectedCount + this.outOfBandCount;
  }

  use(reading: Reading): void {
    this.readings.push(reading);
  }

  reject(fault: Fault, line: number, record?: number): void {
    this.rejectedCount++;
    const where = { source: this.source, line, ...(record === undefined ? {} : { record }) };
    this.log.add({ severity: "warning", ...where, ...fault, action: "row skipped" });
  }

  outOfBand(): void {
    this.outOfBandCount++;
  }

  /** Takes readings back that another reading outdates. */
  drop(outdated: ReadonlySet<Reading>, fault: (reading: Reading) => Fault): void {
    if (outdated.size === 0) return;
    for (const reading of outdated) this.reject(fault(reading), reading.line);
    this.readings = this.readings.filter((reading) => !outdated.has(reading));
  }

  /** Says something about the file that costs no row. */
  say(issue: Omit<Issue, "source">): void {
    this.log.add({ source: this.source, ...issue });
  }

  issues(): readonly Issue[] {
    return this.log.issues();
  }
}
