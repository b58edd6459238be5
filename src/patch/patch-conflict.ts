/** What is wrong with a patch. */
export type PatchConflictKind =
  /** Two start at different addresses, or have different footprints, and share slots. */
  | "overlap"
  /** Equal first and last slots: they move alike, which may be meant. */
  | "duplicate"
  /** The start address is not 1 … 512. */
  | "beyond-512"
  /** It starts in the universe and runs past its slot 512. */
  | "across-universes"
  /** No start address. */
  | "unpatched"
  /** The footprint is not known, or not 1 … 512. */
  | "no-footprint"
  /** The footprint is not the one that the mode has. */
  | "mode-footprint"
  /** No system, or one that isn't there. */
  | "no-system"
  /** The universe is not known, or not 1 … 63999. */
  | "no-such-universe"
  /** The system doesn't carry the universe. */
  | "other-universe"
  /** It takes slots that are reserved. */
  | "reserved"
  /** Several of one name: labels would not tell them apart. */
  | "duplicate-name"
  /** One receiver serves luminaires of several systems: it hears only one. */
  | "receiver-systems"
  /** One receiver serves luminaires of several universes: most give out only one (common practice). */
  | "receiver-universes";

/** Slots of a universe, from first to last. */
export interface SlotRange {
  readonly firstSlot: number;
  readonly lastSlot: number;
}

/** A luminaire in a conflict, with the slots that it takes. */
export interface PatchedLuminaire {
  readonly name: string;
  readonly system: string | null;
  readonly universe: number | null;
  /** Null: no address; without a footprint the start address alone. */
  readonly slots: SlotRange | null;
}

/** One clash or fault of a patch, with all who are in it. */
export interface PatchConflict {
  readonly kind: PatchConflictKind;
  readonly severity: "error" | "warning";
  readonly luminaires: readonly PatchedLuminaire[];
  /** Null where it is about no universe, or several. */
  readonly universe: number | null;
  /** The slots that are taken twice, reserved, or beyond the universe's end. */
  readonly slots: SlotRange | null;
}
