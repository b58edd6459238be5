import type { Issue } from "../issues/index.js";
import type { Crowd, Survey } from "../scan/index.js";
import type { MarginField, PlacementPlan, Room, SecondSystemCost, Venue } from "../venue/index.js";

/** All that the report of `place` tells. */
export interface PlaceReport {
  /** Its radios held to the region's rule. */
  readonly venue: Venue;
  readonly crowd: Crowd;
  /** Every scan of the venue. */
  readonly survey: Survey;
  readonly systems: readonly PlacedSystem[];
  readonly grid: { readonly stepM: number; readonly heightM: number };
  /** Access points whose place the venue file gives. */
  readonly accessPointCount: number;
  readonly busyShareRatio: number;
  readonly reliability: number;
  readonly fadeWords: string;
  readonly pathWords: string;
  readonly issues: readonly Issue[];
}

/** One system of it. */
export interface PlacedSystem {
  readonly name: string;
  /** Null with the reason. */
  readonly placed: SystemPlacement | null;
  readonly reason: string | null;
}

export interface SystemPlacement {
  readonly plan: PlacementPlan;
  readonly pictures: readonly FloorPicture[];
  /** Rooms with receivers of the system that no scan was made in with this crowd or a smaller one. */
  readonly unscannedRooms: readonly string[];
  /** What a second transmitter costs in the band; null where none is proposed. */
  readonly joint: SecondSystemCost | null;
  /** Why there is none though a second transmitter is proposed; else null. */
  readonly jointReason: string | null;
}

/** Margins over the floor of a room: where the transmitter stands at a grid's height. */
export interface FloorPicture {
  readonly room: Room;
  readonly heightM: number;
  readonly field: MarginField;
}
