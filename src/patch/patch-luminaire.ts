/** What a patch needs to know of a luminaire. Their order in a list is the order of hanging. */
export interface PatchLuminaire {
  readonly name: string;
  readonly room: string;
  /** Within the room: its luminaires are kept together, and spare slots follow the last of them. */
  readonly group?: string | null;
  /** Place in the order of hanging, before those that have none; equal ones as listed. */
  readonly hangIndex?: number | null;
  /** Null: the only system, where there is one alone. */
  readonly system?: string | null;
  /** Of the receiver that serves it; null: one of its own. */
  readonly receiver?: string | null;
  readonly mode?: string | null;
  /** DMX slots that it takes, 1 … 512; null: as its mode has it. */
  readonly footprintSlotCount: number | null;
  /** Settled already; with an address but no universe: the system's first. */
  readonly universe?: number | null;
  readonly address?: number | null;
}

/** What a patch needs to know of a system: the universes that its transmitter carries. */
export interface PatchSystem {
  readonly name: string;
  /** 1 … 63999, the first that it carries. */
  readonly universe: number;
  /** How many it carries, one after the other; 1 unless given. */
  readonly universeCount?: number;
}

/** Slots that nothing is to be patched to: house lights, a desk's own channels. */
export interface ReservedSlots {
  /** Null: in every universe. */
  readonly universe: number | null;
  readonly firstSlot: number;
  readonly lastSlot: number;
}

/** How many slots a mode takes. */
export interface ModeFootprint {
  readonly mode: string;
  readonly footprintSlotCount: number;
}
