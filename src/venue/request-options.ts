import type { SceneTerms } from "./receiver-scene.js";
import type { FadeTerms } from "./sight.js";
import type { Place } from "./venue-room.js";
import type { TransmitterPlace, VenueSystem } from "./venue-system.js";

/** A system as it is to run. */
export interface RequestingSystem {
  readonly system: VenueSystem;
  readonly transmitter: TransmitterPlace;
  /** Radio channel; null for a hopping radio. */
  readonly channel: number | null;
}

/** What a request is worked out with. */
export interface RequestOptions extends Omit<SceneTerms, "channels">, FadeTerms {
  readonly systems: readonly RequestingSystem[];
  /** Ids of the building's own sources. */
  readonly buildingIds: ReadonlySet<string>;
  /** Where sources are whose place is known, by id. */
  readonly sourcePlaces?: ReadonlyMap<string, Place> | undefined;
}
