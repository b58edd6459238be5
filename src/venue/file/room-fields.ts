import type { PeopleCounts } from "../venue-room.js";
import type { Field } from "./field.js";
import { antennaField } from "./antenna-field.js";
import { buildKeys, BUILD_SCHEMAS } from "./build-field.js";
import { length, point } from "./field-length.js";
import { entries, list } from "./field-list.js";
import { mapping } from "./field-mapping.js";
import { figure, flag, text, whole } from "./field-values.js";
import { isMapping } from "./file-spot.js";
import { outline } from "./outline-field.js";
import { pathModelField } from "./path-model-field.js";

const MOST_PEOPLE = 200_000;

/** A storey: its name, its floor's height. */
export const storeyField = mapping(
  "a storey",
  {
    name: text("name of the storey"),
    floor: length("height of its floor above the lowest storey's", [0, 500]),
  },
  { floor_loss_db: figure("loss of the floor under it, dB; left out: ITU-R P.1238", [0, 200]) },
);

const crowdCounts = mapping(
  "heads in the room by crowd",
  { full: whole("heads in a full room", [0, MOST_PEOPLE]) },
  {
    empty: whole("heads while nobody is in: crew and staff", [0, MOST_PEOPLE]),
    part: whole("heads in a part full room; left out: half of full", [0, MOST_PEOPLE]),
  },
);
const headCount = whole("heads in a full room", [0, MOST_PEOPLE]);

/** A number of heads in a full room, or one for each crowd. */
const peopleField: Field<PeopleCounts> = {
  schema: {
    description: "heads in a full room, or a mapping of empty, part and full",
    anyOf: [headCount.schema, crowdCounts.schema],
  },
  read: (raw, spot) => {
    if (!isMapping(raw)) {
      const full = headCount.read(raw, spot);
      return full === undefined ? undefined : { empty: 0, part: Math.round(full / 2), full };
    }
    const counts = crowdCounts.read(raw, spot);
    if (counts === undefined) return undefined;
    const { empty, part, full } = counts;
    const people = { empty: empty ?? 0, part: part ?? Math.max(empty ?? 0, Math.round(full / 2)), full };
    if (people.empty <= people.part && people.part <= full) return people;
    const told = `${people.empty}, ${people.part}, ${full}`;
    return spot.error(told, "heads that grow from empty to part to full", "contradiction");
  },
};

/** A room: its outline on the plan, its height, its people. */
export const roomField = mapping(
  "a room",
  {
    name: text("name of the room"),
    outline: outline("outline of the room"),
    height: length("floor to the highest point of the ceiling", [0, 200], true),
  },
  {
    storey: text("the storey that it is on; needed where there are several"),
    path_model: pathModelField,
    places: list("names of scan places in it, beside its own name", text("a place of the scans"), {
      mostCount: 200,
    }),
    people: peopleField,
    seating: outline("where the people are; left out: all over the room"),
    handset_height: length("handsets above the floor, 1.2 m if left out", [0, 20]),
    trim_height: length("height of the lowest edge of luminaires that state none", [0, 200], true),
    laser_line: length("height of the laser line that trim is measured from", [0, 200]),
  },
);

/** A door, window or gap. */
export const openingField = mapping(
  "a door, window or gap",
  {
    from: length("its nearer edge along the wall from the wall's start", [0, 2000]),
    to: length("its farther edge along the wall from the wall's start", [0, 2000], true),
    top: length("its top above the storey's floor", [0, 200], true),
  },
  {
    bottom: length("its bottom above the storey's floor, 0 if left out", [0, 200]),
    open: flag("true where it stands open"),
    ...buildKeys,
  },
  { oneOf: [...BUILD_SCHEMAS, { properties: { open: { const: true } }, required: ["open"] }] },
);

/** A straight wall on the plan. */
export const wallField = mapping(
  "a straight wall",
  { from: point("where it starts"), to: point("where it ends") },
  {
    name: text("name of the wall"),
    storey: text("the storey that it is on; needed where there are several"),
    bottom: length("its bottom above the storey's floor, 0 if left out", [0, 200]),
    top: length("its top above the storey's floor; left out: as high as can be", [0, 200], true),
    openings: entries("its doors, windows and gaps", openingField, { mostCount: 200 }),
    ...buildKeys,
  },
  { oneOf: BUILD_SCHEMAS },
);

const spotKeys = {
  at: point("where it stands"),
  height: length("its height above the floor of its storey", [0, 200]),
};

/** A transmitter's place, or one that might be. */
export const transmitterField = mapping("where a transmitter stands or might stand", spotKeys, {
  name: text("name of the place"),
  room: text("the room that it is in; left out: the one that holds the point"),
  antenna: antennaField,
  in_rack: flag("is its antenna in a rack or cabinet?"),
  in_sight: flag("do its receivers see its antenna?"),
});
