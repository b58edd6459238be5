import { describe, expect, test } from "vitest";
import { headerMeaning, wordsOf } from "../../src/scan/header-meaning.js";
import { headedAddress, isHeaderRow } from "../../src/scan/header-row.js";

const NOBODY: ReadonlySet<string> = new Set();

// Plain dictionary words: English, German, French, Spanish, Italian, Dutch, Portuguese, Japanese.
test.each([
  ["bssid", ["MAC address", "Adresse", "dirección MAC", "indirizzo", "adres", "endereço", "MACアドレス"]],
  ["ssid", ["Network name", "Netzwerkname", "Nom du réseau", "Nombre", "Nome", "Naam", "ネットワーク名"]],
  ["channel", ["Channel", "Kanal-Nr.", "canal", "canale", "kanaal", "チャンネル", "ch"]],
  ["frequency", ["Frequency (MHz)", "Frequenz", "fréquence", "frecuencia", "frequentie", "周波数"]],
  ["centre_mhz", ["Centre frequency", "center freq", "Mittenfrequenz", "fréquence centrale"]],
  [
    "signal_dbm",
    ["RSSI", "Signal level", "Pegel", "Signalstärke", "niveau", "señal", "sinal", "dBm", "rxLevel"],
  ],
  ["quality", ["Quality", "Signal (%)", "Signalqualität", "qualité", "calidad", "%"]],
  ["time", ["Timestamp", "Uhrzeit", "heure", "hora", "tijd", "時刻"]],
  ["place", ["Place", "Room name", "Standort", "lieu", "lugar", "luogo", "plaats", "場所"]],
  ["width_mhz", ["Channel width", "Kanalbreite", "Bandwidth (MHz)", "largeur de canal"]],
  ["airtime_ratio", ["Channel utilization", "Kanalauslastung", "load %", "charge"]],
  ["other", ["Noise level", "SNR (dB)", "Rauschpegel", "data rate", "First seen"]],
  ["security", ["Security", "Verschlüsselung", "sécurité"]],
] as const)("%s", (meaning, headers) => {
  for (const header of headers) expect([header, headerMeaning(header)?.meaning]).toEqual([header, meaning]);
});

test("no known word, no meaning", () => {
  for (const header of ["", "Ding", "q7", "!!"]) expect(headerMeaning(header)).toBeNull();
});
test("words are cut at capitals, units kept whole", () => {
  expect(wordsOf("SignalStrength dBm")).toEqual(["signal", "strength", "dbm"]);
  expect(wordsOf("FreqMHz")).toEqual(["freq", "mhz"]);
});

describe("a row of headers", () => {
  test.each([
    [["SSID", "Kanal"], true],
    [["SSID", "6"], false],
    [["Name", "02:1a:00:00:00:01", "Kanal"], false],
    [["Dear crew", "see you"], false],
    [["", "02:1a:00:00:00:01", "02:1a:00:00:00:02"], true],
    [["02:1a:00:00:00:01", "02:1a:00:00:00:02", "-60"], false],
  ])("%j: %s", (cells, expected) => expect(isHeaderRow(cells, NOBODY)).toBe(expected));
  test("an address may carry its channel", () => {
    expect(headedAddress(" 02-1A-00-00-00-01 (ch 6)")).toEqual({ bssid: "02:1a:00:00:00:01", behind: "6" });
    expect(headedAddress("spot 1")).toBeNull();
  });
});
