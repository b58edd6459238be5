import type { LengthUnit } from "../report/index.js";
import type { SketchRoom, SketchScan, VenueSketch } from "./venue-sketch.js";
import { yamlText } from "./yaml-text.js";

/** A venue file to start from, valid as it stands: commented YAML. */
export function venueTemplate(sketch: VenueSketch, units: LengthUnit, schemaFile: string | null): string {
  const sizes = SIZES[units];
  const isSketch = sketch.scans.length > 0;
  return [
    ...headLines(units, schemaFile),
    "rooms:",
    ...(isSketch
      ? ["  # Sketched from the places of the scans: draw the outlines and set the heights."]
      : []),
    ...sketch.rooms.flatMap((room, index) => roomLines(room, index, sizes)),
    "",
    ...wallLines(sizes),
    "",
    "systems:",
    "  # One transmitter, its receivers, one radio channel or hop set.",
    ...sketch.rooms.flatMap((room, index) => systemLines(room, index, sizes)),
    "",
    ...luminaireLines(sketch.rooms, sizes),
    "",
    ...hardwareLines(units),
    "",
    ...emitterLines(sizes),
    "",
    ...scanLines(sketch.scans, sizes),
    "",
    ...sourceLines(sketch.sources),
    "",
    ...CROWD_LINES,
    "",
  ].join("\n");
}

/** Sizes to start from, round in the file's unit. */
interface Sizes {
  readonly wide: number;
  readonly deep: number;
  readonly ceiling: number;
  readonly trim: number;
  readonly mast: number;
  readonly desk: number;
  readonly door: number;
  readonly doorTop: number;
  readonly weight: string;
}

const SIZES: Readonly<Record<LengthUnit, Sizes>> = {
  m: {
    wide: 20,
    deep: 12,
    ceiling: 8,
    trim: 5,
    mast: 4,
    desk: 1,
    door: 2,
    doorTop: 2.1,
    weight: "weight_kg: 8.5",
  },
  ft: {
    wide: 65,
    deep: 40,
    ceiling: 26,
    trim: 16,
    mast: 13,
    desk: 3,
    door: 6,
    doorTop: 7,
    weight: "weight_lb: 18.5",
  },
};

function headLines(units: LengthUnit, schemaFile: string | null): string[] {
  return [
    ...(schemaFile === null ? [] : [`# yaml-language-server: $schema=./${schemaFile}`]),
    "# A venue for stillband. A line that starts with # is left out: take the # away to use it.",
    "# x and y are on the plan, heights above the floor. Lengths are in the one unit below,",
    "# unless a key names another (thickness_mm). What is left out is assumed, and reports say so.",
    "name: My venue",
    `units: ${units}`,
    "# region: EU  # US, CA, EU, GB, AU, NZ, JP or world: power and band edges",
    "# date: 2026-03-07",
    "# event_minutes: 90",
    "# building: commercial  # residential, office or commercial: floors and paths by ITU-R P.1238",
    "# all_equipment_listed: true  # once emitters holds every 2.4 GHz device of the house",
    "",
    "# storeys:",
    "#   - { name: ground, floor: 0 }",
    "",
  ];
}

function roomLines({ name, places }: SketchRoom, index: number, { wide, deep, ceiling }: Sizes): string[] {
  const [left, right] = [index * wide, (index + 1) * wide];
  return [
    `  - name: ${yamlText(name)}`,
    "    # Corners in order; the first is not repeated.",
    `    outline: [[${left}, 0], [${right}, 0], [${right}, ${deep}], [${left}, ${deep}]]`,
    `    height: ${ceiling}  # to the highest point of the ceiling`,
    ...(places.length > 0 ? [`    places: [${places.map(yamlText).join(", ")}]`] : []),
    "    # people: { empty: 4, part: 120, full: 300 }",
  ];
}

function wallLines({ deep, door, doorTop }: Sizes): string[] {
  return [
    "# walls:",
    "#   - name: west",
    "#     from: [0, 0]",
    `#     to: [0, ${deep}]`,
    "#     material: brick  # or layers: a list; or loss_db: a number",
    "#     thickness_mm: 330",
    "#     openings:",
    `#       - { from: 1, to: ${1 + door}, top: ${doorTop}, material: wood, thickness_mm: 40 }`,
  ];
}

function systemLines({ name }: SketchRoom, index: number, { wide, deep, mast }: Sizes): string[] {
  const quoted = yamlText(name);
  return [
    `  - name: ${quoted}`,
    `    rooms: [${quoted}]`,
    "    profile: raster-13  # or a file of your radio's own figures",
    `    universe: ${index + 1}`,
    `    transmitter: { at: [${index * wide + 1}, ${deep / 2}], height: ${mast}, antenna: { kind: dipole } }`,
    "    # candidates:",
    `    #   - { name: far wall, at: [${(index + 1) * wide - 1}, ${deep / 2}], height: ${mast} }`,
    "    # set: { tx_power_dbm: 10 }",
  ];
}

function luminaireLines(
  rooms: readonly SketchRoom[],
  { wide, deep, ceiling, trim, weight }: Sizes,
): string[] {
  return [
    "# Or keep them in a table beside this file: luminaires: luminaires.csv, its columns named as these keys.",
    "luminaires:",
    ...rooms.flatMap(({ name }, index) => [
      `  - name: ${index + 1}-1`,
      `    room: ${yamlText(name)}`,
      `    x: ${index * wide + wide / 4}`,
      `    y: ${deep / 4}`,
      `    ceiling_height: ${ceiling}`,
      `    trim_height: ${trim}`,
      "    # footprint: 8",
      `    # ${weight}`,
      "    # watts: 150",
      "    # circuit: A1",
      "    emergency: unknown  # yes, no or unknown: does it count as emergency or exit lighting?",
      "    on_link_loss: unknown  # hold, dark, preset, full or unknown",
    ]),
  ];
}

/** What the crew's sheets need beside the luminaires' own columns. */
function hardwareLines(units: LengthUnit): string[] {
  const isMetric = units === "m";
  return [
    "# What luminaires hang by, as measured; one that differs says so in a column of its own.",
    "# hang:",
    `#   link_pitch: ${isMetric ? "35 mm" : "1 3/8 in"}`,
    `#   canopy_height: ${isMetric ? "60 mm" : "2 1/2 in"}`,
    `#   suspension_weight: ${isMetric ? "0.5 kg/m" : "0.35 lb/ft"}`,
    `#   cord_weight: ${isMetric ? "0.12 kg/m" : "0.08 lb/ft"}`,
    "# circuits:",
    `#   - { name: A1, supply_v: ${isMetric ? 230 : 120}, breaker_a: ${isMetric ? 16 : 20}, control: unknown, feed: own-box, earth: unknown }`,
  ];
}

function emitterLines({ desk, wide }: Sizes): string[] {
  return [
    "# What else sends at 2.4 GHz; Wi-Fi comes from the scans.",
    "# emitters:",
    `#   - { name: bar oven, type: microwave-oven, at: [1, 1], height: ${desk} }`,
    `#   - { name: stage intercom, type: intercom, at: [${wide - 1}, 2], height: ${desk} }`,
  ];
}

function scanLines(scans: readonly SketchScan[], { desk }: Sizes): string[] {
  if (scans.length === 0)
    return [
      "# Scans of the band, from this file's folder: empty, and again with the room full.",
      "# scans: []",
      `# One scan: { file: hall-full.csv, place: hall, crowd: full, height: ${desk} }`,
    ];
  return [
    `# Add height: ${desk} where the scanning antenna stood above the floor.`,
    "scans:",
    ...scans.map(({ file, place, crowd, time }) => {
      const keys = { file, place, crowd, time };
      const filled = Object.entries(keys).filter((entry): entry is [string, string] => entry[1] !== null);
      return `  - { ${filled.map(([key, value]) => `${key}: ${yamlText(value)}`).join(", ")} }`;
    }),
  ];
}

function sourceLines(sources: VenueSketch["sources"]): string[] {
  return [
    "# Whose the Wi-Fi sources are. Only the building's own carry the crowd's airtime, and only they go to the",
    "# network staff. The owner is presumed from the level, from -75 dBm up the building's: check each line.",
    "# sources:",
    ...(sources.length === 0 ? ["#   - { source: Guest network, owner: building }"] : []),
    ...sources.map(
      ({ source, owner, words }) => `#   - { source: ${yamlText(source)}, owner: ${owner} }  # ${words}`,
    ),
  ];
}

const CROWD_LINES = [
  "# What people bring, all assumed.",
  "# crowd:",
  "#   carried_ratio: 0.8",
  "#   on_air_ratio: 0.001",
  "#   handset_eirp_dbm: 15",
  "#   body_loss_db: 6",
  "#   scan_height_gain_db: 6",
];
