/** A time of the DMX512 line, with its origin. */
export interface SourcedTime {
  readonly valueUs: number;
  readonly source: string;
  /** Read in the source or in a text that restates it, or recalled. */
  readonly status: "read" | "memory";
}

const E111 = "ANSI E1.11";

/** Times of a DMX512 packet. */
export const DMX_TIMING = {
  /** One bit at 250 kbit/s. */
  bit: { valueUs: 4, source: E111, status: "read" },
  /** A slot: start bit, eight data bits, two stop bits. */
  slot: { valueUs: 44, source: E111, status: "read" },
  /** A transmitter's shortest break. */
  leastBreak: { valueUs: 92, source: `${E111} table 6`, status: "memory" },
  /** A transmitter's usual break. */
  typicalBreak: { valueUs: 176, source: `${E111} table 6`, status: "memory" },
  /** A transmitter's shortest mark after break. */
  leastMarkAfterBreak: { valueUs: 12, source: `${E111} table 6`, status: "memory" },
  /** A transmitter's shortest time from break to break. */
  leastBreakToBreak: { valueUs: 1204, source: `${E111} table 6`, status: "memory" },
  /** The longest time from break to break: a receiver may take more for loss of data. */
  mostBreakToBreak: { valueUs: 1_000_000, source: E111, status: "read" },
  /** The shortest break that a receiver must follow. */
  receivedBreak: { valueUs: 88, source: `${E111} table 7`, status: "read" },
  /** The shortest mark after break that a receiver must follow. */
  receivedMarkAfterBreak: { valueUs: 8, source: `${E111} table 7`, status: "read" },
  /** The shortest time from break to break that a receiver must follow. */
  receivedBreakToBreak: { valueUs: 1196, source: `${E111} table 7`, status: "read" },
} as const satisfies Record<string, SourcedTime>;
