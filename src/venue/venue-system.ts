import type { Antenna } from "../propagation/index.js";
import type { Enclosure, RadioProfile } from "../radio/index.js";
import type { Place } from "./venue-room.js";

/** Where a transmitter stands or might stand. */
export interface TransmitterPlace {
  readonly name: string;
  readonly at: Place;
  /** Height above the floor of its storey, m. */
  readonly heightM: number;
  readonly room: string;
  /** Null: the profile's gain, the same in every direction. */
  readonly antenna: Antenna | null;
  readonly inRack: boolean | null;
  readonly inSight: boolean | null;
}

/** One transmitter, its receivers, one channel or hop set. */
export interface VenueSystem {
  readonly name: string;
  /** Where its luminaires are. */
  readonly rooms: readonly string[];
  readonly profile: RadioProfile;
  /** Null: not placed yet, `place` finds it among the candidates or over the rooms' floor. */
  readonly transmitter: TransmitterPlace | null;
  readonly candidates: readonly TransmitterPlace[];
  /** A radio channel that is settled; null: to be chosen. */
  readonly channel: number | null;
  /** Radio channels to choose among; null: all that the band allows. */
  readonly allowedChannels: readonly number[] | null;
  /** 1 … 63999, the first that it carries. */
  readonly universe: number;
}

/** A receiver box at a luminaire, or one that several share. */
export interface VenueReceiver {
  readonly name: string;
  readonly system: string;
  readonly room: string;
  readonly at: Place;
  readonly heightM: number;
  /** Null: the profile's gain, the same in every direction. */
  readonly antenna: Antenna | null;
  /** Null: the profile's. */
  readonly enclosure: Enclosure | null;
  /** Names of the luminaires that it serves. */
  readonly luminaires: readonly string[];
}
