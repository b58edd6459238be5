import { enclosureLosses } from "../../radio/index.js";
import type { Enclosure } from "../../radio/index.js";
import type { EmitterType } from "../venue-emitter.js";
import { antennaField } from "./antenna-field.js";
import type { Field } from "./field.js";
import { length, point } from "./field-length.js";
import { entries, list } from "./field-list.js";
import { mapping } from "./field-mapping.js";
import { day, figure, foreignText, text, whole, word } from "./field-values.js";
import { isMapping } from "./file-spot.js";
import { transmitterField } from "./room-fields.js";

/** Figures of a profile that differ here: any mapping; what is in it is judged with the profile. */
const setField: Field<Readonly<Record<string, unknown>>> = {
  schema: {
    description: "figures of the profile that are your own, as tx_power_dbm: 10",
    type: "object",
    additionalProperties: true,
  },
  read: (raw, spot) =>
    isMapping(raw) ? raw : spot.error(raw, "figures of the profile, as tx_power_dbm: 10"),
};

/** A system: one transmitter, its receivers, one channel or hop set. */
export const systemField = mapping(
  "a system: one transmitter, its receivers, one channel or hop set",
  {
    name: text("name of the system"),
    rooms: list("rooms that its luminaires are in", text("a room"), { leastCount: 1, mostCount: 100 }),
  },
  {
    profile: text("radio profile: a built-in name or a file beside this one; raster-13 if left out"),
    set: setField,
    transmitter: transmitterField,
    candidates: entries("places where its transmitter might stand", transmitterField, { mostCount: 500 }),
    channel: whole("its radio channel, where that is settled", [0, 9999]),
    allowed_channels: list("radio channels to choose among", whole("a radio channel", [0, 9999]), {
      leastCount: 1,
      mostCount: 1000,
    }),
    universe: whole("the DMX universe that it carries, the first of several; 1 if left out", [1, 63_999]),
    receiver_antenna: antennaField,
  },
);

/** A receiver that several luminaires share, or whose place or housing is its own. */
export const receiverField = mapping(
  "a receiver that several luminaires share, or that differs from the rest",
  { name: text("name of the receiver") },
  {
    system: text("its system; left out: the one of its luminaires' room"),
    room: text("its room; left out: that of its first luminaire"),
    at: point("where it is; left out: at its first luminaire"),
    height: length("its height above the floor; left out: that of its first luminaire", [0, 200]),
    antenna: antennaField,
    enclosure: word("what its antenna sits in", Object.keys(enclosureLosses) as Enclosure[]),
    luminaires: list("names of the luminaires that it serves", text("a luminaire"), { mostCount: 512 }),
  },
);

const EMITTER_TYPES: readonly EmitterType[] = [
  "bluetooth",
  "ieee-802.15.4",
  "microwave-oven",
  "analogue-video",
  "wireless-dmx",
  "microphone",
  "intercom",
  "camera-control",
  "video-link",
  "hearing-assistance",
  "other",
];

/** Something else that sends at 2.4 GHz, Wi-Fi apart. */
export const emitterField = mapping(
  "something else that sends at 2.4 GHz; Wi-Fi comes from the scans",
  {
    name: text("name of the emitter"),
    type: word("what it is", EMITTER_TYPES),
    at: point("where it stands"),
    height: length("its height above the floor of its storey", [0, 200]),
  },
  {
    storey: text("the storey that it is on; left out: that of the room that holds the point"),
    eirp_dbm: figure("what it radiates, dBm EIRP; left out: as its type has it", [-60, 60]),
    airtime_ratio: figure("share of time that it is on the air; left out: as its type has it", [0, 1]),
    centre_mhz: figure("centre of its band, MHz; left out: as its type has it", [2300, 2600]),
    bandwidth_mhz: figure("width of its band, MHz; left out: as its type has it", [0.001, 200]),
  },
);

/** A scan file of the survey. */
export const scanField = mapping(
  "a scan file",
  { file: text("the file, from this file's folder") },
  {
    room: text("the room that it was made in; left out: each row's place says"),
    place: text("fills the blank places of its rows"),
    crowd: word("fills the blank crowds of its rows", ["empty", "part", "full"]),
    time: text("fills the blank times of its rows, ISO 8601"),
    height: length("height of the scanning antenna above the floor; left out: as on the floor", [0, 200]),
  },
);

/** Whose a source that the scans heard is. */
export const sourceField = mapping(
  "whose a Wi-Fi source is",
  {
    source: foreignText("a network's name or an address, as the scans have it"),
    owner: word("whose it is", ["building", "neighbour", "unknown"]),
  },
  {
    at: point("where it stands, if known"),
    height: length("its height above the floor; 2.5 m if left out", [0, 200]),
    storey: text("the storey that it is on"),
  },
);

/** What people bring. */
export const crowdField = mapping(
  "what people bring; all of it assumed where left out",
  {},
  {
    carried_ratio: figure("handsets that are switched on, a head", [0, 10]),
    on_air_ratio: figure("share of time that one of them is on the air", [0, 1]),
    handset_eirp_dbm: figure("what a handset radiates, dBm EIRP", [-30, 30]),
    body_loss_db: figure("loss of a path through the audience, dB", [0, 60]),
    scan_height_gain_db: figure("what a floor scan misses at trim height, dB", [0, 40]),
  },
);

/** Day of the event. */
export const dateField = day("day of the event");
