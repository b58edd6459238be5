import type { Circuit, HangFigures } from "../install/index.js";
import type { Building } from "../propagation/index.js";
import type { RegionCode } from "../radio/index.js";
import type { CrowdFigures } from "./venue-crowd.js";
import type { VenueEmitter } from "./venue-emitter.js";
import type { Luminaire } from "./venue-luminaire.js";
import type { VenueReceiver, VenueSystem } from "./venue-system.js";
import type { Room, Storey, Wall } from "./venue-room.js";
import type { SourceMark, VenueScan } from "./venue-scan.js";

/**
 * A venue as plain data: everything that the venue file says, lengths in metres, defaults filled in. One
 * frame of reference for all rooms of a storey: x and y on the plan, z upwards from the lowest storey's floor.
 */
export interface Venue {
  readonly name: string;
  /** The unit that the file was written in; every length here is in metres. */
  readonly units: "m" | "ft";
  readonly region: RegionCode | null;
  /** Of the event, ISO 8601 day; null where not given. */
  readonly date: string | null;
  readonly eventMinutes: number;
  /** For floors and paths where a storey or a room says nothing of its own. */
  readonly building: Building;
  /** Does the file list every 2.4 GHz device of the house, Wi-Fi apart? */
  readonly allEquipmentListed: boolean;
  /** Lowest first, at least one. */
  readonly storeys: readonly Storey[];
  readonly rooms: readonly Room[];
  readonly walls: readonly Wall[];
  readonly systems: readonly VenueSystem[];
  /** One for each luminaire that names none, then those of the file. */
  readonly receivers: readonly VenueReceiver[];
  readonly luminaires: readonly Luminaire[];
  /** What luminaires hang by where their own columns say nothing. */
  readonly hang: Partial<HangFigures>;
  /** What is known of circuits beside the luminaires' own columns. */
  readonly circuits: readonly Circuit[];
  readonly emitters: readonly VenueEmitter[];
  readonly scans: readonly VenueScan[];
  readonly sources: readonly SourceMark[];
  readonly crowd: CrowdFigures;
}
