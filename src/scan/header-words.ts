import type { ScanCsvColumn } from "./scan-csv-columns.js";

/** What a column may hold: a column of a scan CSV, or something from which one can be made, or nothing of use. */
export type ColumnMeaning =
  | ScanCsvColumn
  | "frequency"
  | "quality"
  | "date"
  | "clock"
  | "band"
  | "kind"
  | "x"
  | "y"
  | "security"
  | "other";

/** Words that a header of some meaning holds: whole words, and stems that may stand within a longer word. */
export interface HeaderWords {
  readonly meaning: ColumnMeaning;
  readonly words: readonly string[];
  readonly stems: readonly string[];
}

/**
 * Plain dictionary words of several languages, without accents, in the order in which they are tried: what
 * qualifies a word ("channel width", "signal quality") comes before the word itself.
 */
export const HEADER_WORDS: readonly HeaderWords[] = [
  entry(
    "other",
    "snr first tx vendor maker rate bitrate speed mbps count probed",
    "noise rausch ruido bruit rumore hersteller manufact fabricant datenrate packet frame beacon byte paket",
  ),
  entry(
    "security",
    "privacy flags wpa auth key",
    "securi encrypt cipher crypto verschlussel sicherheit chiffre segur cifrad sicurezz beveilig capabilit",
  ),
  entry("width_mhz", "bw", "width breite largeur ancho larghezza breedte largura szerokos 帯域幅 幅"),
  entry(
    "airtime_ratio",
    "load busy duty uso",
    "airtime utili auslastung belegung occupa ocupa carga carico charge bezetting belasting 使用率 負荷",
  ),
  entry("stations", "sta", "station clients stazion estacion teilnehmer client 端末"),
  entry("centre_mhz", "", "center centre mittenfreq zentral central midden 中心"),
  entry("quality", "percent prozent bars", "qualit calidad kwalit qualid 品質"),
  entry("band", "band bande banda", "frequenzband 周波数帯"),
  entry("frequency", "mhz ghz khz hz", "freq frec frek czestot 周波数"),
  entry(
    "time",
    "time when wann ora tid seen",
    "timestamp datetime zeit heure hora orario tijd czas gesehen 時刻 時間",
  ),
  entry("date", "date data tag dia day jour giorno dag", "datum fecha 日付"),
  entry("crowd", "", "crowd audience publikum publi pubblic 観客"),
  entry("bssid", "mac hw ap", "bssid address adress adres direccion indirizzo endereco hwaddr アドレス"),
  entry(
    "place",
    "ort wo sala point room spot zone area site",
    "place location position posic posiz raum standort platz punkt lieu salle piece lugar sitio ubicac luogo stanza punto plaats ruimte locatie 場所 部屋 位置",
  ),
  entry("standard", "phy mode norm norme norma modo", "standard standaard protocol 規格"),
  entry("kind", "typ type tipo tech", "technolog 種類"),
  entry(
    "ssid",
    "name nom nome naam red rete rede network wlan wifi",
    "ssid netz reseau netwerk nombre ネットワーク 名",
  ),
  entry("channel", "ch chan", "channel kanal canal kanaal チャンネル チャネル"),
  entry(
    "signal_dbm",
    "dbm rssi rx power moc",
    "signal level pegel strength starke empfang niveau nivel livell segnal senal sinal puissance potenc potenza vermogen sygnal poziom レベル 強度 信号",
  ),
  entry("x", "x east", ""),
  entry("y", "y north", ""),
  entry("other", "index row nr no number nummer", ""),
];

function entry(meaning: ColumnMeaning, words: string, stems: string): HeaderWords {
  return { meaning, words: listed(words), stems: listed(stems) };
}

function listed(text: string): readonly string[] {
  return text === "" ? [] : text.split(" ");
}
