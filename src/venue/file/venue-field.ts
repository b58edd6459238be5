import { buildingLosses } from "../../propagation/index.js";
import type { Building } from "../../propagation/index.js";
import { regionRules } from "../../radio/index.js";
import type { RegionCode } from "../../radio/index.js";
import type { Luminaire } from "../venue-luminaire.js";
import { circuitField } from "./circuit-field.js";
import type { Field } from "./field.js";
import type { Entry } from "./field-list.js";
import { entries } from "./field-list.js";
import { mapping } from "./field-mapping.js";
import { figure, flag, text, word } from "./field-values.js";
import { hangField } from "./hang-field.js";
import { luminaireField } from "./luminaire-field.js";
import { roomField, storeyField, wallField } from "./room-fields.js";
import {
  crowdField,
  dateField,
  emitterField,
  receiverField,
  scanField,
  sourceField,
  systemField,
} from "./system-fields.js";

/** Luminaires one by one. */
export const luminaireList = entries("luminaires", luminaireField, { mostCount: 20_000 });
const luminaireFile = text("a table of luminaires beside this file, as luminaires.csv");

/** Luminaires in the file itself, or the name of a table. */
const luminairesField: Field<readonly Entry<Luminaire>[] | string> = {
  schema: {
    description: "luminaires, or the name of a table of them beside this file, as luminaires.csv",
    anyOf: [luminaireList.schema, luminaireFile.schema],
  },
  read: (raw, spot) => (Array.isArray(raw) ? luminaireList.read(raw, spot) : luminaireFile.read(raw, spot)),
};

/** The whole venue file: the one table that reader and schema are made from. */
export const venueField = mapping(
  "a venue for stillband: rooms, walls, wireless DMX systems, luminaires, and what else sends at 2.4 GHz",
  {
    name: text("name of the venue"),
    units: word("unit of every length whose key names none", ["m", "ft"]),
    rooms: entries("rooms", roomField, { leastCount: 1, mostCount: 1000 }),
    systems: entries("wireless DMX systems", systemField, { leastCount: 1, mostCount: 500 }),
  },
  {
    $schema: text("where editors find this file's schema"),
    region: word("the rule for power and band edges", Object.keys(regionRules) as RegionCode[]),
    date: dateField,
    event_minutes: figure("length of an event, minutes; 90 if left out", [1, 100_000]),
    building: word(
      "kind of building for floors and paths, commercial if left out",
      Object.keys(buildingLosses) as Building[],
    ),
    all_equipment_listed: flag("true once emitters lists every 2.4 GHz device of the house, Wi-Fi apart"),
    storeys: entries("storeys, the lowest at 0", storeyField, { leastCount: 1, mostCount: 100 }),
    walls: entries("walls", wallField, { mostCount: 20_000 }),
    receivers: entries("receivers; a luminaire that none names has one of its own", receiverField, {
      mostCount: 20_000,
    }),
    luminaires: luminairesField,
    hang: hangField,
    circuits: entries("circuits that feed luminaires", circuitField, { mostCount: 2000 }),
    emitters: entries("what else sends at 2.4 GHz", emitterField, { mostCount: 2000 }),
    scans: entries("scan files of the survey", scanField, { mostCount: 1000 }),
    sources: entries("whose the Wi-Fi sources of the scans are", sourceField, { mostCount: 5000 }),
    crowd: crowdField,
  },
);
