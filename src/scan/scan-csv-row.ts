import { READ_BAND_MHZ, wifiChannelCentreMhz } from "../band/index.js";
import { placeOnChannel, wifiChannelAtMhz } from "./channel-placement.js";
import type { ChannelPlacement } from "./channel-placement.js";
import type { Fault } from "./fault.js";
import type { Fill } from "./fill.js";
import { isLevel, LEVEL_EXPECTED } from "./level-range.js";
import type { Reading } from "./reading.js";
import type { ScanCsvCells } from "./scan-csv-cell.js";

const HIGHEST_CHANNEL = 14;

/**
 * Is a row outside the band that is read? It is when its centre, if it can be read, lies outside
 * 2400–2500 MHz, or when it has no centre and a channel above 14. Nothing else of it is judged.
 */
export function isOutOfBand(cells: ScanCsvCells): boolean {
  const centreMhz = cells.peekNumber("centre_mhz");
  if (centreMhz !== null) return centreMhz < READ_BAND_MHZ[0] || centreMhz > READ_BAND_MHZ[1];
  if (!cells.isBlank("centre_mhz")) return false;
  const channel = cells.peekNumber("channel");
  return channel !== null && Number.isInteger(channel) && channel > HIGHEST_CHANNEL;
}

/** @returns the reading of a row in band; or what is wrong with it: then none of it is used */
export function readScanCsvRow(cells: ScanCsvCells, line: number, fill: Fill): Reading | Fault {
  const { parsers } = cells;
  const timeMs = cells.word("time", "a time as ISO 8601 writes it, or blank", parsers.time);
  const crowd = cells.word("crowd", "empty, part, full or blank", parsers.crowd);
  const bssid = cells.word(
    "bssid",
    "the address of one radio, six pairs of hex digits, or blank",
    parsers.bssid,
  );
  const placement = placementOf(cells);
  const signalDbm = cells.number("signal_dbm", LEVEL_EXPECTED, isLevel);
  if (cells.isBlank("signal_dbm")) cells.reject("missing-cell", "signal_dbm", LEVEL_EXPECTED);
  const airtimeRatio = cells.number("airtime_ratio", "a share from 0 to 1, or blank", isRatio);
  const stationCount = cells.number("stations", "a whole number, or blank", isCount);
  if (cells.fault !== null || placement === null || signalDbm === null) return cells.fault!;
  return {
    source: fill.source,
    line,
    timeMs: timeMs ?? fill.timeMs,
    place: parsers.place(cells.text("place")) || fill.place,
    crowd: crowd ?? fill.crowd,
    bssid,
    ssid: parsers.ssid(cells.text("ssid")),
    channel: placement.channel,
    centreMhz: placement.centreMhz,
    widthMhz: placement.widthMhz,
    signalDbm,
    signalAssumed: cells.signalAssumed,
    centreAssumed: placement.centreAssumed,
    airtimeRatio,
    stationCount,
    standard: parsers.standard(cells.text("standard")),
    ageMs: null,
  };
}

/** @returns null with a fault noted, where channel, centre and width can't be read or contradict */
function placementOf(cells: ScanCsvCells): ChannelPlacement | null {
  const readChannel = cells.number("channel", "a Wi-Fi channel from 1 to 14", isChannel);
  const centreMhz = cells.number("centre_mhz", "a frequency in MHz, or blank", Number.isFinite);
  const width = cells.number("width_mhz", "20, 22, 40 or blank", isWidth);
  if (cells.fault !== null) return null;
  const channel = readChannel ?? (centreMhz === null ? null : wifiChannelAtMhz(centreMhz));
  if (channel === null) {
    if (centreMhz === null) cells.reject("missing-cell", "channel", "a Wi-Fi channel, or a centre in MHz");
    else cells.reject("bad-cell", "centre_mhz", "the centre of a Wi-Fi channel from 1 to 14");
    return null;
  }
  const widthMhz = width === 40 ? 40 : 20;
  const placement = placeOnChannel(channel, centreMhz, widthMhz);
  if (placement === null) cells.reject("contradiction", "centre_mhz", centreExpected(channel, widthMhz));
  return placement;
}

function centreExpected(channel: number, widthMhz: 20 | 40): string {
  const primaryMhz = wifiChannelCentreMhz(channel)!;
  return widthMhz === 20
    ? `${primaryMhz} MHz, the centre of Wi-Fi channel ${channel}`
    : `${primaryMhz - 10} or ${primaryMhz + 10} MHz, 40 MHz with Wi-Fi channel ${channel} as primary`;
}

function isChannel(value: number): boolean {
  return wifiChannelCentreMhz(value) !== null;
}

function isWidth(value: number): boolean {
  return value === 20 || value === 22 || value === 40;
}

function isRatio(value: number): boolean {
  return value >= 0 && value <= 1;
}

function isCount(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 0;
}
