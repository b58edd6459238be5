import type { PatchConflict } from "./patch-conflict.js";
import type { UnpatchedReason } from "./placement.js";

/** A luminaire on the address sheet. */
export interface AddressRow {
  readonly name: string;
  readonly room: string;
  readonly group: string | null;
  readonly system: string | null;
  readonly receiver: string | null;
  readonly mode: string | null;
  readonly footprintSlotCount: number | null;
  readonly universe: number | null;
  readonly address: number | null;
  /** The last slot that it takes; null: not known. */
  readonly lastSlot: number | null;
  /** Was its address settled beforehand? */
  readonly fixed: boolean;
  /** Why it has no address. */
  readonly reason: UnpatchedReason | null;
}

/** How full a universe is. */
export interface UniverseUse {
  readonly universe: number;
  /** Who carry it. */
  readonly systems: readonly string[];
  readonly usedSlotCount: number;
  readonly spareSlotCount: number;
  readonly reservedSlotCount: number;
  readonly freeSlotCount: number;
  /** The last slot that a luminaire takes: slots that must be sent; 0: none. */
  readonly lastUsedSlot: number;
}

/** Luminaires that the universes of their system have no room for. */
export interface PatchOverflow {
  readonly system: string;
  /** In the order in which they were to be patched. */
  readonly luminaires: readonly string[];
  readonly slotCount: number;
  /** Universes beyond its own that they lie in. */
  readonly furtherUniverseCount: number;
  /** Systems of the same kind that this takes, each with a transmitter and radio channel of its own. */
  readonly furtherSystemCount: number;
  /** Would all fit if the order were free? Null: not proved either way, or it was free. */
  readonly fitsInFreeOrder: boolean | null;
}

/** The fewest universes for systems that share theirs. */
export interface FewestUse {
  readonly systems: readonly string[];
  readonly universeCount: number;
  /** No patch that leaves the settled addresses alone needs fewer; equal to `universeCount` where proved. */
  readonly lowerBoundCount: number;
  readonly proved: boolean;
}

/** Start addresses for all luminaires, and what stands against them. */
export interface AddressPlan {
  /** One for each luminaire, in the order of the list. */
  readonly rows: readonly AddressRow[];
  /** Lowest first. */
  readonly universes: readonly UniverseUse[];
  readonly overflows: readonly PatchOverflow[];
  /** Only where the order is free. */
  readonly fewest: readonly FewestUse[];
  readonly conflicts: readonly PatchConflict[];
}
