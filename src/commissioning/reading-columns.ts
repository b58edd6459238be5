import { wordsOf } from "../scan/index.js";

/** The columns of a walk test or of readings after install, as the project writes them. */
export const WALK_COLUMNS = [
  "time",
  "receiver",
  "transmitter",
  "distance_m",
  "x",
  "y",
  "z",
  "received_dbm",
  "quality",
  "heard",
  "floor_dbm",
  "wall_count",
  "stage",
] as const;

/** Name of a column of readings. */
export type ReadingColumn = (typeof WALK_COLUMNS)[number];

/** A column by its header: what it holds and the unit that the header names. */
export interface ReadingColumnMeaning {
  readonly column: ReadingColumn;
  /** Of lengths; null: none named. */
  readonly unit: "m" | "ft" | null;
}

/**
 * The meaning of a header: the column's own name, or plain words of several languages.
 * @returns null where no word is known
 * @example readingColumn("Distance (ft)"); // => { column: "distance_m", unit: "ft" }
 * @example readingColumn("Received dBm"); // => { column: "received_dbm", unit: null }
 */
export function readingColumn(header: string): ReadingColumnMeaning | null {
  const name = header.trim().toLowerCase();
  const words = wordsOf(header);
  const own = WALK_COLUMNS.find((column) => column === name);
  const column = own ?? WORDS.find(([, known]) => words.some((word) => known.has(word)))?.[0];
  if (column === undefined) return null;
  const unit = words.some((word) => FEET.has(word))
    ? "ft"
    : words.some((word) => METRES.has(word))
      ? "m"
      : null;
  return { column, unit };
}

const FEET: ReadonlySet<string> = new Set(["ft", "feet", "foot"]);
const METRES: ReadonlySet<string> = new Set(["m", "metre", "metres", "meter", "meters"]);

/** In the order in which they are tried: what qualifies a level comes before the level itself. */
const WORDS: readonly (readonly [ReadingColumn, ReadonlySet<string>])[] = [
  known("floor_dbm", "floor sensitivity limit threshold empfindlichkeit sensibilite sensibilidad soglia"),
  known("stage", "stage"),
  known("heard", "heard link linked connected gehort verbunden entendu oido sentito"),
  known("wall_count", "wall walls wande wand murs mur paredes pared muri muro"),
  known("quality", "quality percent % qualitat qualite calidad qualita"),
  known("time", "time date when zeit datum uhrzeit heure fecha hora ora"),
  known("transmitter", "transmitter tx system sender source emetteur transmisor emisor trasmettitore"),
  known("distance_m", "distance dist range separation entfernung abstand distanz distancia distanza"),
  known(
    "received_dbm",
    "dbm rssi level signal received power pegel empfangspegel niveau nivel livello potencia",
  ),
  known(
    "receiver",
    "receiver rx fixture luminaire name empfanger leuchte scheinwerfer recepteur receptor ricevitore",
  ),
  known("x", "x"),
  known("y", "y"),
  known("z", "z height hohe hauteur altura altezza"),
];

function known(column: ReadingColumn, words: string): readonly [ReadingColumn, ReadonlySet<string>] {
  return [column, new Set(words.split(" "))];
}
