/**
 * Writes the demo venue's scans: an invented arts house in an old rope works, scanned empty and full.
 * Usage: node tests/tools/make-demo-scans.js [FOLDER]   (default: fixtures/scans)
 *
 * Level = EIRP − (40.2 dB at 1 m + 22 dB per decade of distance) − walls − people in the way − 4 dB (the laptop)
 *         + shadowing (one draw per radio and place) + jitter (one draw per look), in whole dB.
 * Every draw is a hash of the seed and of what it is for: same bytes on every run, and adding a radio
 * moves no other. Every place, name and address is made up.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { iwScanText } from "./iw-scan-text.js";

const SEED = "rope, hemp and tar 1";

/** Metres: the foyer spans x −14…0, the hall 0…30, the studio 30…42. `peopleDb`: loss through a full house. */
const PLACES = table(`
name         | room   | x   | y  | z   | peopleDb
hall front   | hall   | 20  | 9  | 1.3 | 3
hall balcony | hall   | 4   | 9  | 4.8 | 3
hall stage   | hall   | 27  | 8  | 2.2 | 0
studio       | studio | 35  | 6  | 1.5 | 0
studio store | studio | 40  | 2  | 1.5 | 0
foyer        | foyer  | -7  | 7  | 1.5 | 2
foyer bar    | foyer  | -12 | 11 | 1.5 | 3`);

/** Wall loss, dB, from where a radio is to the room of the place; the last four are outside the building. */
const WALLS_DB = {
  hall: { hall: 0, foyer: 7, studio: 9 },
  foyer: { hall: 7, foyer: 0, studio: 16 },
  studio: { hall: 9, foyer: 16, studio: 0 },
  west: { hall: 23, foyer: 16, studio: 32 },
  east: { hall: 25, foyer: 32, studio: 16 },
  north: { hall: 17, foyer: 17, studio: 17 },
  south: { hall: 17, foyer: 17, studio: 17 },
};

/**
 * `eirp`: dBm; the house has turned its 2.4 GHz power down. `ch`: primary Wi-Fi channel, for 80 MHz the label
 * of the centre. `width`: MHz; 40+ has its secondary channel above, 40? does not say where its centre is.
 * `load`: announces BSS Load (own: the building's channel; a number: the share in an empty house).
 * `names` are parted by " / ", "-" is a hidden one; their addresses count up from `address` in the last
 * octet (`step` a) or in the first (`step` b: 02, 06, 0a, 0e).
 */
const RADIOS = table(`
id        | where  | x   | y   | z   | eirp | ch  | width | std | load | crowd | step | address           | names
booth     | hall   | 2   | 15  | 5.2 | 13   | 6   | 40+   | n   | own  | both  | a    | 02:5e:1c:40:11:30 | Quillmere Guest / Quillmere Staff / Quillmere Tech / -
stage     | hall   | 29  | 17  | 4.0 | 4    | 1   | 20    | n   | own  | both  | b    | 02:5e:1c:40:12:70 | Quillmere Guest / Quillmere Staff / Quillmere Tech
rigging   | hall   | 15  | 1   | 8.5 | 9    | 11  | 20    | n   | own  | both  | a    | 02:5e:1c:40:13:b0 | Quillmere Guest / Quillmere Staff
foyer     | foyer  | -2  | 1   | 3.4 | 4    | 1   | 20    | n   | own  | both  | a    | 02:5e:1c:40:14:40 | Quillmere Guest / Quillmere Staff / -
bar       | foyer  | -13 | 8   | 3.0 | 14   | 6   | 20    | ax  | own  | both  | a    | 0a:41:7e:20:9c:50 | Quillmere Guest / Quillmere Staff
tickets   | foyer  | -1  | 13  | 2.5 | 2    | 11  | 20    | n   | own  | both  | b    | 02:5e:1c:40:16:20 | Quillmere Guest / Quillmere Tills
studio    | studio | 41  | 11  | 3.2 | 13   | 6   | 20    | n   | own  | both  | a    | 0a:41:7e:20:9c:54 | Quillmere Guest / Quillmere Staff
control   | studio | 31  | 1   | 2.8 | 1    | 11  | 20    | n   | own  | both  | b    | 02:5e:1c:40:18:60 | Quillmere Staff / -
wardrobe  | studio | 34  | 11  | 2.0 | -2   | 1   | 20    | n   | no   | both  | a    | 06:c3:09:5b:72:1d | wardrobe steam iron
turnstile | foyer  | -4  | 2   | 1.1 | 8    | 6   | 22    | b   | no   | both  | a    | 0e:77:30:d4:05:a6 | turnstile-1
printer   | hall   | 1   | 1   | 1.0 | 6    | 6   | 20    | n   | no   | both  | a    | 5a:12:6f:83:e0:4c | print here (balcony stairs)
boiler    | hall   | 14  | 17  | 0.5 | 3    | 1   | 20    | g   | no   | both  | a    | 36:b8:21:0d:9f:e3 | boiler room
dockcam   | east   | 46  | 14  | 4.0 | 4    | 3   | 20    | n   | no   | both  | a    | 7e:24:d6:51:38:92 | -
twine     | west   | -38 | 12  | 3   | 17   | 1   | 20    | n   | 0.22 | both  | a    | 92:0b:ce:17:64:80 | Knot & Twine / Knot & Twine guests
kiln      | west   | -34 | -6  | 3   | 19   | 9   | 20    | n   | no   | both  | a    | b6:fd:42:70:1a:c8 | Kettle, Kiln & Co
loft      | north  | 8   | 42  | 9   | 18   | 11  | 20    | ax  | 0.12 | both  | a    | da:33:58:e9:07:10 | The "Loft" upstairs
brass     | north  | 24  | 48  | 6   | 16   | 6   | 20    | n   | no   | both  | a    | 4e:61:b5:2c:d8:34 | 🎺 brass practice
sums      | north  | 31  | 44  | 3   | 17   | 13  | 20    | n   | no   | both  | a    | 62:9a:0f:c7:53:6b | =2+2 studios
wool      | south  | -3  | -36 | 4   | 18   | 6   | 20    | ax  | 0.31 | both  | a    | 16:d0:84:3e:bb:a0 | Café Wollknäuel / Wollknäuel Kasse
yard      | south  | 18  | -40 | 5   | 18   | 11  | 40?   | n   | no   | both  | a    | ce:48:17:f2:66:09 | boatyard office
sail      | south  | 33  | -33 | 4   | 16   | 1   | 20    | g   | no   | both  | a    | 8a:05:7b:94:2d:51 | sailmakers
attic     | east   | 66  | 3   | 8   | 15   | 4   | 20    | n   | no   | empty | a    | f2:ac:39:06:c1:7e | attic no 7
attic     | east   | 66  | 3   | 8   | 15   | 11  | 20    | n   | no   | full  | a    | f2:ac:39:06:c1:7e | attic no 7
cobbler   | east   | 60  | -10 | 3   | 11   | 6   | 20    | n   | no   | both  | a    | 2a:e7:50:ab:14:d3 | cobbler@62
flat-c    | east   | 58  | 16  | 6   | 16   | 1   | 20    | ax  | 0.18 | both  | a    | 7a:1f:c4:68:90:20 | top floor flat / -
bikes     | west   | -44 | 25  | 3   | 17   | 11  | 20    | b   | no   | both  | a    | 3e:82:6d:f5:49:b7 | bike-shed-old
heron     | north  | -10 | 40  | 3   | 13   | 6   | 20    | n   | no   | both  | a    | a6:5b:13:de:70:88 | heron house
lock      | south  | 44  | -45 | 3   | 17   | 13  | 20    | ax  | no   | both  | a    | 56:c9:ea:31:8f:02 | Lock Keeper's WLAN
phone-1   | hall   | 17  | 12  | 1.0 | 2    | 11  | 20    | ax  | no   | full  | a    | 1a:d4:7c:05:b2:6e | Maja's pocket net
phone-2   | hall   | 10  | 6   | 1.0 | 6    | 6   | 20    | n   | no   | full  | a    | 96:30:ef:8d:41:5a | hotspot of Tobiah
phone-3   | hall   | 5   | 11  | 4.5 | 5    | 6   | 20    | ax  | no   | full  | a    | ea:7f:06:b3:c8:19 | do not connect 😴
phone-4   | foyer  | -10 | 9   | 1.1 | 1    | 11  | 20    | n   | no   | full  | a    | 42:1c:95:d8:3a:f4 | row F seat 12
phone-5   | hall   | 12  | 15  | 1.0 | 2    | 1   | 20    | n   | no   | full  | a    | 7e:b9:40:62:0d:c5 | grandpa abroad
phone-6   | foyer  | -5  | 12  | 1.0 | 5    | 6   | 20    | n   | no   | full  | a    | d2:56:a8:1f:e4:73 | -
phone-7   | studio | 37  | 9   | 1.0 | 4    | 6   | 20    | ax  | no   | full  | a    | 0e:e8:3b:97:5c:20 | tambourine
booth-5   | hall   | 2   | 15  | 5.2 | 16   | 42  | 80    | ac  | own  | both  | a    | 02:5e:1c:40:21:30 | Quillmere Guest / Quillmere Staff
foyer-5   | foyer  | -2  | 1   | 3.4 | 16   | 106 | 80    | ax  | own  | both  | a    | 02:5e:1c:40:24:40 | Quillmere Guest / Quillmere Staff
studio-5  | studio | 41  | 11  | 3.2 | 16   | 58  | 80    | ac  | own  | both  | a    | 02:5e:1c:40:28:50 | Quillmere Staff
loft-5    | north  | 8   | 42  | 9   | 20   | 42  | 80    | ax  | 0.05 | both  | a    | da:33:58:e9:17:10 | The "Loft" upstairs`);

/** Share of its channel that a radio of the building's announces, before the draw. */
const BUSY_RATIO = {
  empty: { 1: 0.07, 6: 0.13, 11: 0.06, other: 0.03 },
  part: { 1: 0.2, 6: 0.31, 11: 0.19, other: 0.09 },
  full: { 1: 0.48, 6: 0.62, 11: 0.55, other: 0.3 },
};
const STATIONS_COUNT = { empty: 3, part: 14, full: 46 };

/** Three rounds of the places, 25 minutes apart, three minutes a place. */
const VISITS = [
  { file: "ropewalk-empty.csv", crowd: "empty", startMs: Date.UTC(2026, 2, 4, 14, 5) },
  { file: "ropewalk-full.csv", crowd: "full", startMs: Date.UTC(2026, 2, 7, 19, 20) },
];
const ROUND_COUNT = 3;

/** The scanning laptop's antenna and case. */
const LAPTOP_LOSS_DB = 4;

/** What the text scan in the foyer shows as the doors open. */
const TEXT_SCAN = {
  file: "ropewalk-foyer-iw.txt",
  place: "foyer",
  crowd: "part",
  radios: "foyer bar tickets booth turnstile kiln brass foyer-5".split(" "),
};

const COLUMNS =
  "time,place,crowd,bssid,ssid,channel,centre_mhz,width_mhz,signal_dbm,airtime_ratio,stations,standard";

/** @returns {{ file: string, text: string }[]} every demo scan */
export function demoScans() {
  return [...VISITS.map(visitCsv), textScan()];
}

/** Rows of a table with a head line; cells are trimmed, numbers become numbers. */
function table(text) {
  const [head, ...rows] = text
    .trim()
    .split("\n")
    .map((line) => line.split("|").map((cell) => cell.trim()));
  const value = (cell) => (/^-?\d+(\.\d+)?$/.test(cell) ? Number(cell) : cell);
  return rows.map((cells) => Object.fromEntries(head.map((name, index) => [name, value(cells[index])])));
}

/** @returns a number in [0, 1) that depends on the key alone (FNV-1a, then the Murmur3 finaliser) */
function chance(...key) {
  let hash = 0x811c9dc5;
  for (const byte of Buffer.from([SEED, ...key].join("|"))) hash = Math.imul(hash ^ byte, 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return ((hash ^ (hash >>> 16)) >>> 0) / 2 ** 32;
}

/** @returns a near-normal draw, mean 0, deviation 1: twelve uniform ones added, less 6 */
function bell(...key) {
  let sum = -6;
  for (let index = 0; index < 12; index++) sum += chance(...key, index);
  return sum;
}

/** The local mean of a radio at a place, dBm. */
function meanLevelDbm(radio, place, crowd) {
  const distanceM = Math.hypot(radio.x - place.x, radio.y - place.y, radio.z - place.z);
  const pathLossDb = (radio.ch > 14 ? 46.8 : 40.2) + 22 * Math.log10(Math.max(distanceM, 1));
  const wallsDb = WALLS_DB[radio.where][place.room];
  const peopleDb = crowd === "full" ? place.peopleDb : 0;
  const shadowDb = (isOutside(radio) ? 4 : 2.5) * bell("shadow", radio.id, place.name);
  return radio.eirp - LAPTOP_LOSS_DB - pathLossDb - wallsDb - peopleDb + shadowDb;
}

function isOutside(radio) {
  return ["west", "east", "north", "south"].includes(radio.where);
}

/** One look: what is heard at a place at a time, strongest first. */
function look(radios, place, crowd, stamp) {
  const heard = [];
  for (const radio of radios.filter((each) => each.crowd === "both" || each.crowd === crowd)) {
    const [busyRatio, stations] = loadOf(radio, crowd, stamp);
    const swingDb = (crowd === "full" ? 2 : 1.2) * bell("swing", radio.id, stamp);
    const away = radio.id.startsWith("phone") && chance("away", radio.id, stamp) < 0.25;
    for (const [index, ssid] of radio.names.split(" / ").entries()) {
      const levelDbm =
        meanLevelDbm(radio, place, crowd) + swingDb + 0.6 * bell("name", radio.id, index, stamp);
      const bssid = address(radio, index);
      if (away || chance("miss", bssid, stamp) > heardRatio(levelDbm)) continue;
      heard.push({
        radio,
        bssid,
        ssid: ssid === "-" ? "" : ssid,
        signalDbm: Math.round(levelDbm),
        busyRatio,
        stations,
      });
    }
  }
  return heard.sort((a, b) => b.signalDbm - a.signalDbm || (a.bssid < b.bssid ? -1 : 1));
}

/** The share of looks in which a beacon of that level is caught: 98 % when strong, none below −94 dBm. */
function heardRatio(levelDbm) {
  return Math.min(0.98, Math.max(0, (levelDbm + 94) / 14));
}

/** What BSS Load says: [busy share in 1/255, stations], or nulls. */
function loadOf(radio, crowd, stamp) {
  if (radio.load === "no") return [null, null];
  const own = radio.load === "own";
  const busy = BUSY_RATIO[crowd];
  const evening = crowd === "empty" ? 1 : 1.3;
  const base = own ? (busy[radio.ch] ?? busy.other) : radio.load * evening;
  const draw = 1 + 0.12 * bell("busy", radio.id, crowd) + 0.06 * bell("busy", radio.id, stamp);
  const stations = (own ? STATIONS_COUNT[crowd] : 5 * evening) * chance("stations", radio.id, stamp);
  return [Math.round(255 * Math.min(0.75, Math.max(0.01, base * draw))), Math.floor(stations)];
}

function address(radio, index) {
  const octets = radio.address.split(":").map((octet) => Number.parseInt(octet, 16));
  octets[radio.step === "a" ? 5 : 0] += radio.step === "a" ? index : 4 * index;
  return octets.map((octet) => octet.toString(16).padStart(2, "0")).join(":");
}

/** Where a radio sits in the band; the `ch` of an 80 MHz radio is the label of its centre. */
function placement({ ch, width }) {
  if (ch > 14)
    return { channel: ch - 6, primaryMhz: 4970 + 5 * ch, centreMhz: 5000 + 5 * ch, secondary: "above" };
  const primaryMhz = 2407 + 5 * ch;
  if (width === "40?") return { channel: ch, primaryMhz, centreMhz: "" };
  const isWide = width === "40+";
  const centreMhz = primaryMhz + (isWide ? 10 : 0);
  return { channel: ch, primaryMhz, centreMhz, secondary: isWide ? "above" : "none" };
}

function visitCsv({ file, crowd, startMs }) {
  const lines = [COLUMNS];
  for (let round = 0; round < ROUND_COUNT; round++)
    for (const [index, place] of PLACES.entries()) {
      const minutes = round * 25 + index * 3;
      const timeMs = startMs + minutes * 60_000 + Math.floor(60 * chance("seconds", round, index)) * 1000;
      const stamp = new Date(timeMs).toISOString().replace(".000Z", "Z");
      for (const row of look(RADIOS, place, crowd, stamp))
        lines.push(csvLine([stamp, place.name, crowd], row));
    }
  return { file, text: `${lines.join("\n")}\n` };
}

function csvLine(lead, { radio, bssid, ssid, signalDbm, busyRatio, stations }) {
  const { channel, centreMhz } = placement(radio);
  const width = String(radio.width).replace(/\D/, "");
  const airtime = busyRatio === null ? "" : (busyRatio / 255).toFixed(3);
  const heard = [bssid, ssid, channel, centreMhz, width, signalDbm, airtime, stations ?? "", radio.std];
  return [...lead, ...heard].map(quoted).join(",");
}

function quoted(cell) {
  return /[",]/.test(cell) ? `"${String(cell).replaceAll('"', '""')}"` : cell;
}

function textScan() {
  const place = PLACES.find(({ name }) => name === TEXT_SCAN.place);
  const radios = RADIOS.filter(({ id }) => TEXT_SCAN.radios.includes(id));
  const blocks = look(radios, place, TEXT_SCAN.crowd, "text scan").map((row) => ({
    ...row,
    ...placement(row.radio),
    standard: row.radio.std,
    associated: row.radio.id === "foyer" && row.ssid === "Quillmere Staff",
    zeroedName: row.radio.id === "booth",
    upMs: 86_400_000 + Math.floor(4e8 * chance("up", row.radio.id)),
    ageMs: Math.floor(2800 * chance("age", row.bssid)),
  }));
  return { file: TEXT_SCAN.file, text: iwScanText(blocks) };
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  const folder = process.argv[2] ?? fileURLToPath(new URL("../../fixtures/scans", import.meta.url));
  mkdirSync(folder, { recursive: true });
  for (const { file, text } of demoScans()) writeFileSync(join(folder, file), text);
}
