import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { seeded } from "./statistics.js";

const SEED = 11;
const ROOMS = { acrossCount: 5, upCount: 4, widthM: 15, depthM: 12, heightM: 6 };
const LUMINAIRES_A_ROOM = 15;
const SOURCES = 160;
const SOURCES_A_ROOM = 40;
const INSTANTS = 25;

/**
 * Writes a venue of 20 rooms, each with a system of its own and 15 luminaires, and a scan of 1,000 rows in each:
 * 300 luminaires and 20,000 rows, all invented, from a seed.
 * @returns the venue file's path
 */
export function writeLargeVenue(folder) {
  mkdirSync(folder, { recursive: true });
  const random = seeded(SEED);
  const rooms = Array.from({ length: ROOMS.acrossCount * ROOMS.upCount }, (_, index) => ({
    name: `room ${index + 1}`,
    x: (index % ROOMS.acrossCount) * ROOMS.widthM,
    y: Math.floor(index / ROOMS.acrossCount) * ROOMS.depthM,
  }));
  const sources = Array.from({ length: SOURCES }, (_, index) => ({
    bssid: `02:be:4c:${hex(index >> 4)}:${hex((index * 37) & 255)}:${hex((index & 15) << 4)}`,
    channel: [1, 6, 11][index % 3],
    x: random() * ROOMS.acrossCount * ROOMS.widthM,
    y: random() * ROOMS.upCount * ROOMS.depthM,
  }));
  for (const room of rooms) writeFileSync(join(folder, scanName(room)), scanText(room, sources, random));
  writeFileSync(join(folder, "luminaires.csv"), luminaireText(rooms));
  const path = join(folder, "venue.yaml");
  writeFileSync(path, venueText(rooms));
  return path;
}

const hex = (byte) => (byte & 255).toString(16).padStart(2, "0");
const scanName = ({ name }) => `${name.replace(" ", "-")}.csv`;

function scanText(room, sources, random) {
  const [x, y] = [room.x + ROOMS.widthM / 2, room.y + ROOMS.depthM / 2];
  const heard = [...sources]
    .sort((a, b) => Math.hypot(a.x - x, a.y - y) - Math.hypot(b.x - x, b.y - y))
    .slice(0, SOURCES_A_ROOM);
  const rows = Array.from({ length: INSTANTS }, (_, instant) =>
    heard.map((source) => {
      const distanceM = Math.max(2, Math.hypot(source.x - x, source.y - y));
      const levelDbm = Math.round(-38 - 30 * Math.log10(distanceM) + 6 * (random() - 0.5));
      const time = `2026-03-07T20:${String(instant * 2).padStart(2, "0")}:00Z`;
      const crowd = instant < 12 ? "empty" : "full";
      return `${time},${room.name},${crowd},${source.bssid},net ${source.bssid.slice(9)},${source.channel},,20,${levelDbm},${(0.05 + 0.3 * random()).toFixed(2)},,n`;
    }),
  ).flat();
  return `time,place,crowd,bssid,ssid,channel,centre_mhz,width_mhz,signal_dbm,airtime_ratio,stations,standard\n${rows.join("\n")}\n`;
}

function luminaireText(rooms) {
  const rows = rooms.flatMap((room, at) =>
    Array.from({ length: LUMINAIRES_A_ROOM }, (_, index) => {
      const x = room.x + 2 + (index % 5) * 2.7;
      const y = room.y + 2 + Math.floor(index / 5) * 4;
      return `L${at + 1}-${index + 1},${room.name},${x.toFixed(2)},${y.toFixed(2)},6,4.5,eight slots,8,120,7.5,C${at + 1},row ${Math.floor(index / 5) + 1},400,no`;
    }),
  );
  return `Name,Room,X (m),Y (m),Ceiling height (m),Trim height (m),Mode,Footprint,Watts,Weight (kg),Circuit,Group,Body height (mm),Emergency\n${rows.join("\n")}\n`;
}

function venueText(rooms) {
  const corner = ({ x, y }) => {
    const [x2, y2] = [x + ROOMS.widthM, y + ROOMS.depthM];
    return `[[${x}, ${y}], [${x2}, ${y}], [${x2}, ${y2}], [${x}, ${y2}]]`;
  };
  const walls = rooms.flatMap(({ name, x, y }) => [
    `  - { name: "${name} south", from: [${x}, ${y}], to: [${x + ROOMS.widthM}, ${y}], material: brick, thickness_mm: 215 }`,
    `  - { name: "${name} west", from: [${x}, ${y}], to: [${x}, ${y + ROOMS.depthM}], material: brick, thickness_mm: 215 }`,
  ]);
  return `name: A house of twenty rooms
units: m
all_equipment_listed: true
rooms:
${rooms.map((room) => `  - { name: "${room.name}", outline: ${corner(room)}, height: ${ROOMS.heightM}, people: { empty: 2, part: 12, full: 24 } }`).join("\n")}
walls:
${walls.join("\n")}
systems:
${rooms
  .map(
    ({ name, x, y }, index) =>
      `  - { name: "${name}", rooms: ["${name}"], profile: raster-13, universe: ${index + 1}, transmitter: { name: "mast ${index + 1}", at: [${x + 7.5}, ${y + 6}], height: 5, room: "${name}", antenna: { kind: dipole } } }`,
  )
  .join("\n")}
luminaires: luminaires.csv
hang: { suspension: chain, link_pitch: 35 mm }
scans:
${rooms.map((room) => `  - { file: ${scanName(room)}, room: "${room.name}", height: 1.4 }`).join("\n")}
`;
}
