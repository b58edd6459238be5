/** A unit that a table's header or cell may name. */
export type CellUnit = "m" | "cm" | "mm" | "ft" | "in" | "kg" | "lb";

/** What a header says of its column. */
export interface LuminaireColumn {
  /** The luminaire's key; `weight` is kg or lb by its unit. */
  readonly key: string;
  readonly unit: CellUnit | null;
}

/** Headers by their words, units and signs left out; the first key that knows them has them. */
const HEADERS: Readonly<Record<string, readonly string[]>> = {
  name: [
    "name",
    "luminaire",
    "luminaire name",
    "fixture",
    "fixture name",
    "fixture no",
    "unit no",
    "unit name",
    "id",
    "label",
    "leuchte",
    "bezeichnung",
    "nom",
    "luminaria",
    "nombre",
  ],
  room: ["room", "space", "room name", "raum", "salle", "sala", "local"],
  x: ["x", "pos x", "x pos", "position x", "x position", "x coordinate"],
  y: ["y", "pos y", "y pos", "position y", "y position", "y coordinate"],
  ceiling_height: [
    "ceiling height",
    "ceiling",
    "ceiling point",
    "height of ceiling",
    "height ceiling",
    "hanging point height",
    "deckenhohe",
    "raumhohe",
    "hauteur plafond",
    "hauteur sous plafond",
    "altura techo",
  ],
  trim_height: [
    "trim height",
    "trim",
    "height of trim",
    "hang height",
    "bottom height",
    "lowest edge",
    "unterkante",
    "hohe unterkante",
    "hauteur",
    "hauteur basse",
  ],
  system: ["system", "radio system", "transmitter", "systeme", "sender"],
  receiver: ["receiver", "receiver name", "receiver box", "rx", "empfanger", "recepteur", "receptor"],
  mode: ["mode", "dmx mode", "modus"],
  footprint: [
    "footprint",
    "dmx footprint",
    "slots",
    "dmx slots",
    "slot count",
    "channel count",
    "channels",
    "dmx channels",
    "kanale",
    "canaux",
    "canales",
  ],
  universe: ["universe", "dmx universe", "universum", "univers", "universo"],
  address: [
    "address",
    "dmx address",
    "start address",
    "dmx start address",
    "dmx",
    "startadresse",
    "dmx adresse",
    "adresse",
    "direccion",
  ],
  watts: ["watts", "watt", "power", "load", "wattage", "leistung", "puissance", "potencia"],
  weight: ["weight", "mass", "gewicht", "poids", "peso"],
  circuit: ["circuit", "circuit no", "breaker", "stromkreis", "circuito"],
  group: ["group", "gruppe", "groupe", "grupo"],
  emergency: [
    "emergency",
    "emergency lighting",
    "emergency light",
    "exit lighting",
    "notlicht",
    "secours",
    "emergencia",
  ],
  on_link_loss: [
    "on link loss",
    "link loss",
    "on signal loss",
    "signal loss",
    "on dmx loss",
    "dmx loss",
    "when frames stop",
    "on loss",
  ],
};
const KEY_OF = new Map(Object.entries(HEADERS).flatMap(([key, words]) => words.map((word) => [word, key])));

const UNITS: Readonly<Record<string, CellUnit>> = {
  m: "m",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
  cm: "cm",
  mm: "mm",
  ft: "ft",
  feet: "ft",
  foot: "ft",
  in: "in",
  inch: "in",
  inches: "in",
  kg: "kg",
  lb: "lb",
  lbs: "lb",
};
const SIGNS = new Set(["w", "va", "nr", "slots"]);

/**
 * What a header of a crew's table says, by plain words of several languages.
 * @returns null where no word is known: the column is the crew's own
 * @example luminaireColumn("Trim height (ft)"); // => { key: "trim_height", unit: "ft" }
 */
export function luminaireColumn(header: string): LuminaireColumn | null {
  const words = wordsOf(header);
  const unit =
    words
      .slice(1)
      .map((word) => UNITS[word])
      .find((each) => each !== undefined) ?? null;
  const plain = words.filter((word, index) => index === 0 || (UNITS[word] === undefined && !SIGNS.has(word)));
  const key = KEY_OF.get(words.join(" ")) ?? KEY_OF.get(plain.join(" "));
  return key === undefined ? null : { key, unit };
}

/** Lower case, without accents, cut at anything that is neither letter nor digit. */
function wordsOf(header: string): readonly string[] {
  return header
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2")
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
}
