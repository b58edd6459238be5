/** One pass over 2400–2500 MHz in 1 MHz bins. */
export interface Pass {
  readonly date?: string;
  readonly time: string;
  /** Level by the bin's lower edge, MHz; the others hold −100 dBm. */
  readonly levels: Readonly<Record<number, number>>;
}

/** A power sweep as wide rows: date, time, low Hz, high Hz, bin Hz, samples, levels. */
export function wideSweep(passes: readonly Pass[]): string {
  return passes
    .map(({ date = "2026-05-01", time, levels }) => {
      const cells = Array.from({ length: 100 }, (_, index) => String(levels[2400 + index] ?? -100));
      return `${[date, time, 2_400_000_000, 2_500_000_000, 1_000_000, 20, ...cells].join(", ")}\n`;
    })
    .join("");
}
