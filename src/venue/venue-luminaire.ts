/** How a luminaire behaves when frames stop. */
export type OnLinkLoss = "hold" | "dark" | "preset" | "full" | "unknown";

/** A lighting fixture on its hanging point, as a crew's spreadsheet tells it. */
export interface Luminaire {
  readonly name: string;
  readonly room: string;
  readonly x: number;
  readonly y: number;
  /** Of its ceiling point above the floor, m. */
  readonly ceilingHeightM: number | null;
  /** Of the luminaire's lowest edge above the floor, m. */
  readonly trimHeightM: number | null;
  readonly system: string | null;
  /** Of the receiver that serves it; null: one of its own. */
  readonly receiver: string | null;
  readonly mode: string | null;
  /** DMX512 slots. */
  readonly footprintSlotCount: number | null;
  /** Universe and address that are settled already. */
  readonly universe: number | null;
  readonly address: number | null;
  readonly watts: number | null;
  readonly weightKg: number | null;
  readonly circuit: string | null;
  readonly group: string | null;
  /** Does it count as emergency or exit lighting? */
  readonly emergency: "yes" | "no" | "unknown";
  readonly onLinkLoss: OnLinkLoss;
  /** Every further column of the file, as typed: the crew's own. */
  readonly further: Readonly<Record<string, string>>;
}
