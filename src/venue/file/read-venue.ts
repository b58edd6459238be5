import type { Issue } from "../../issues/index.js";
import { referenceCrowd } from "../reference-crowd.js";
import type { Venue } from "../venue.js";
import type { Luminaire } from "../venue-luminaire.js";
import { readCircuits } from "./circuit-field.js";
import type { Entry } from "./field-list.js";
import type { FileSpot, LineOf } from "./file-spot.js";
import { fileSpot, isMapping } from "./file-spot.js";
import { luminaireEntries } from "./read-luminaires.js";
import type { TableRow } from "./read-luminaires.js";
import { fittedLuminaires } from "./read-luminaires-of-venue.js";
import type { FiledLuminaire } from "./read-luminaires-of-venue.js";
import { readCrowd, readEmitters, readSources, readVenueScans } from "./read-others.js";
import { readReceivers } from "./read-receivers.js";
import { readRooms, readStoreys } from "./read-rooms.js";
import type { PathModelOf, RoomModels } from "./read-rooms.js";
import type { ProfileOf } from "./read-system-profile.js";
import type { FiledSystem } from "./read-systems.js";
import { plainSystem, readSystems } from "./read-systems.js";
import { readWalls } from "./read-walls.js";
import { tellSharedPlaces } from "./tell-shared-places.js";
import { luminaireList, venueField } from "./venue-field.js";
import { namesIn } from "./venue-scope.js";
import type { VenueScope } from "./venue-scope.js";

/** A table of luminaires beside a venue file: rows of CSV, or plain data with lines of its own. */
export type LuminaireTable =
  | { readonly rows: readonly TableRow[]; readonly decimalComma: boolean }
  | { readonly data: unknown; readonly lineOf?: LineOf };

/** What a venue file is read with. */
export interface ReadVenueOptions {
  /** File name for messages. */
  readonly source: string;
  /** Lines of the file's parts; none unless given. */
  readonly lineOf?: LineOf;
  /** Profile files by the name that the venue file has for them; none unless given. */
  readonly profileOf?: ProfileOf;
  /** Path models' files by the name that the venue file has for them; none unless given. */
  readonly pathModelOf?: PathModelOf;
  /** Tables of luminaires by the name that the venue file has for them; none unless given. */
  readonly luminairesOf?: (file: string) => LuminaireTable | undefined;
}

/** A venue, or all that is wrong with its file. */
export interface VenueImport {
  /** Null when an issue of severity error stopped it: no plan is made from half a venue. */
  readonly venue: Venue | null;
  readonly issues: readonly Issue[];
}

/**
 * A venue from plain data (what parsing YAML or JSON gives), with every mistake at once: an issue's `column` is
 * the path of the key (`rooms[1].outline[2]`), its `line` what `lineOf` says. Keys are `snake_case`; lengths are
 * in the file's one unit unless the key names another.
 * @example readVenue({ name: "Shed", units: "m" }, { source: "venue.yaml" }).issues.map(({ column }) => column); // => ["rooms", "systems"]
 */
export function readVenue(data: unknown, options: ReadVenueOptions): VenueImport {
  const issues: Issue[] = [];
  const { source, lineOf = () => undefined } = options;
  const units = isMapping(data) && data["units"] === "ft" ? "ft" : "m";
  const spot = fileSpot({ issues, source, units, lineOf });
  const parts = venueField.readParts(data, spot);
  if (parts === undefined) return { venue: null, issues };
  const venue = venueOf(parts, data, spot, options, issues);
  const isSound = !issues.some(({ severity }) => severity === "error");
  return { venue: isSound ? venue : null, issues };
}

type VenueParts = NonNullable<ReturnType<typeof venueField.readParts>>;

/** The whole venue from what is sound; only of use where nothing was wrong. */
function venueOf(
  parts: VenueParts,
  data: unknown,
  spot: FileSpot,
  options: ReadVenueOptions,
  issues: Issue[],
): Venue {
  const { pathModelOf = () => undefined } = options;
  const { scope, rooms } = scopeOf(parts, data, { pathModelOf, told: issues });
  const systems = readSystems(parts.systems ?? [], scope, options.profileOf ?? (() => undefined), issues);
  const { given, names } = luminairesOf(parts, data, spot, options, issues);
  const fitted = fittedLuminaires(given, systems, scope);
  const receivers = readReceivers(parts.receivers ?? [], fitted, names, systems, scope);
  tellSharedPlaces(systems, receivers);
  if (fitted.length === names.length) tellIdleSystems(systems, receivers, fitted);
  return {
    name: parts.name ?? "",
    units: spot.units,
    region: parts.region ?? null,
    date: parts.date ?? null,
    eventMinutes: parts.event_minutes ?? 90,
    building: parts.building ?? "commercial",
    allEquipmentListed: parts.all_equipment_listed ?? false,
    storeys: scope.storeys,
    rooms,
    walls: readWalls(parts.walls ?? [], scope),
    systems: systems.map(plainSystem),
    receivers,
    luminaires: fitted.map(({ luminaire }) => luminaire),
    hang: parts.hang ?? {},
    circuits: readCircuits(
      parts.circuits ?? [],
      fitted.map(({ luminaire }) => luminaire.circuit),
    ),
    emitters: readEmitters(parts.emitters ?? [], scope),
    scans: readVenueScans(parts.scans ?? [], scope),
    sources: readSources(parts.sources ?? [], scope),
    crowd: readCrowd(parts.crowd, referenceCrowd),
  };
}

function scopeOf(
  parts: VenueParts,
  data: unknown,
  models: RoomModels,
): { scope: VenueScope; rooms: Venue["rooms"] } {
  const names = {
    storeys: namesIn(data, "storeys"),
    rooms: namesIn(data, "rooms"),
    systems: namesIn(data, "systems"),
    receivers: namesIn(data, "receivers"),
  };
  const storeys = readStoreys(parts.storeys);
  const rooms = readRooms(parts.rooms ?? [], { names, storeys }, models);
  return { rooms, scope: { names, storeys, rooms: new Map(rooms.map((room) => [room.name, room])) } };
}

/** Luminaires of the file itself or of the table that it names, and all their names, sound or not. */
function luminairesOf(
  { luminaires }: VenueParts,
  data: unknown,
  spot: FileSpot,
  { luminairesOf: tableOf }: ReadVenueOptions,
  issues: Issue[],
): { readonly given: readonly Entry<Luminaire>[]; readonly names: readonly string[] } {
  if (luminaires === null || luminaires === undefined) return { given: [], names: [] };
  if (typeof luminaires !== "string") return { given: luminaires, names: namesIn(data, "luminaires") };
  const { units } = spot;
  const table = tableOf?.(luminaires);
  if (table === undefined) {
    spot.key("luminaires").error(luminaires, "a table of luminaires that is there", "unreadable");
    return { given: [], names: [] };
  }
  if ("rows" in table) {
    const { rows, decimalComma } = table;
    const read = luminaireEntries(rows, { source: luminaires, units, decimalComma }, issues);
    return { given: read.entries, names: read.names };
  }
  const { data: list, lineOf = () => undefined } = table;
  const tableSpot = fileSpot({ issues, source: luminaires, units, lineOf });
  return { given: luminaireList.read(list, tableSpot) ?? [], names: namesIn({ list }, "list") };
}

function tellIdleSystems(
  systems: readonly FiledSystem[],
  receivers: Venue["receivers"],
  luminaires: readonly FiledLuminaire[],
): void {
  for (const { name, spot } of systems)
    if (
      !receivers.some(({ system }) => system === name) &&
      !luminaires.some(({ system }) => system?.name === name)
    )
      spot.warn(`${name} has no receivers: no luminaire of its rooms is listed`);
}
