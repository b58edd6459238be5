import { scanCsv } from "../cli/scan-rows.js";
import type { Scratch } from "../cli/scratch.js";

/** Names that would do something if anything took them for more than text. */
export const NAMES = [
  "<script>alert(1)</script>",
  '"><img src=x onerror="alert(2)">',
  "</style><style>*{display:none}",
  "</title><svg onload=alert(3)>",
  "--><a href='javascript:alert(4)'>",
  "=HYPERLINK(1)",
  "a\u202eb\u2066c",
  "{{7*7}} ${x} `y`",
  "</desc></svg><iframe src=http://192.0.2.1/>",
  "</script><script src=http://192.0.2.1/a.js>",
] as const;
/** A venue file refuses controls in names; a scan brings them. */
export const CONTROLS = "\u001b[31mred";

const q = JSON.stringify;
// YAML is a superset of JSON: the names go in as JSON strings.
const VENUE = `name: ${q(NAMES[0])}
units: ft
rooms:
  - { name: ${q(NAMES[1])}, outline: [[0, 0], [44, 0], [44, 30], [0, 30]], height: 20, places: [${q(NAMES[2])}] }
walls:
  - { name: ${q(NAMES[3])}, from: [20, 0], to: [20, 30], material: brick, thickness_mm: 200 }
systems:
  - name: ${q(NAMES[4])}
    rooms: [${q(NAMES[1])}]
    transmitter: { name: ${q(NAMES[3])}, at: [2, 2], height: 13 }
emitters:
  - { name: ${q(NAMES[0])}, type: microwave-oven, at: [5, 5], height: 3 }
scans:
  - { file: hostile.csv, height: 4 }
luminaires:
${NAMES.map((name, at) => `  - { name: ${q(name)}, room: ${q(NAMES[1])}, x: ${3 + 4 * at}, y: 9, trim_height: 13, ceiling_height: 19, mode: ${q(NAMES[at % 3])}, footprint: 8, circuit: ${q(NAMES[at % 4])}, group: ${q(NAMES[2])}, emergency: unknown }`).join("\n")}
`;

/** Writes a venue of hostile names and its scan. @returns the venue file's path */
export function hostileVenue(file: Scratch["file"]): string {
  const rows = [...NAMES, CONTROLS].map((ssid, at) => ({
    time: "2026-02-03T18:00:00Z",
    place: NAMES[2],
    crowd: "full",
    bssid: `02:0${at.toString(16)}:00:00:00:00`,
    ssid,
    channel: 1 + at,
    signal: -50 - 4 * at,
  }));
  file("hostile.csv", scanCsv(rows));
  return file("venue.yaml", VENUE);
}
