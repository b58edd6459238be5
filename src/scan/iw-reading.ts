import { READ_BAND_MHZ, wifiChannelCentreMhz } from "../band/index.js";
import { wifiChannelAtMhz } from "./channel-placement.js";
import type { Fault } from "./fault.js";
import type { Fill } from "./fill.js";
import type { IwBlock } from "./iw-block.js";
import { IW_FIELDS, IwFieldReader } from "./iw-fields.js";
import { parseOsAddress } from "./os-text-address.js";
import { iwStandard } from "./iw-standard.js";
import { decodeIwSsid } from "./iw-ssid.js";
import type { Reading } from "./reading.js";

/**
 * One BSS block as a reading. Out of band goes by the frequency, and nothing else of such a block is
 * judged. The channel is HT operation's, else the DS set's, else the frequency's: a beacon can be heard
 * from the channel beside. A masked address counts as none. 40 MHz takes a secondary channel that is above or below, and no station width
 * of 20 MHz.
 */
export function readIwBlock(block: IwBlock, fill: Fill): Reading | Fault | "out of band" {
  const fields = new IwFieldReader(block);
  const frequencyMhz = fields.read(IW_FIELDS.frequencyMhz);
  if (frequencyMhz !== null && (frequencyMhz < READ_BAND_MHZ[0] || frequencyMhz > READ_BAND_MHZ[1]))
    return "out of band";
  if (frequencyMhz === null) fields.missing(IW_FIELDS.frequencyMhz);
  const address = parseOsAddress(block.address ?? "");
  if (address === null) return addressFault(block);
  const signal = fields.read(IW_FIELDS.signal);
  if (signal === null) fields.missing(IW_FIELDS.signal);
  const [ageMs, airtimeRatio] = [fields.read(IW_FIELDS.ageMs), fields.read(IW_FIELDS.airtimeRatio)];
  const stationCount = fields.read(IW_FIELDS.stationCount);
  const placement = placementOf(fields, frequencyMhz);
  if (fields.fault !== null || signal === null || placement === null) return fields.fault!;
  return {
    source: fill.source,
    line: block.line,
    timeMs: fill.timeMs,
    place: fill.place,
    crowd: fill.crowd,
    bssid: address.bssid,
    ssid: decodeIwSsid(block.get("ssid") ?? ""),
    channel: placement.channel,
    centreMhz: placement.centreMhz,
    widthMhz: placement.widthMhz,
    signalDbm: signal.signalDbm,
    signalAssumed: signal.signalAssumed,
    centreAssumed: false,
    airtimeRatio,
    stationCount,
    standard: iwStandard(block),
    ageMs,
  };
}

function addressFault({ address }: IwBlock): Fault {
  return {
    code: address === null ? "unreadable" : "bad-cell",
    column: "BSS",
    ...(address === null ? {} : { value: address }),
    expected: "a line BSS with the address of one radio",
  };
}

type Placement = Pick<Reading, "channel" | "centreMhz" | "widthMhz">;

function placementOf(fields: IwFieldReader, frequencyMhz: number | null): Placement | null {
  const primaryChannel = fields.read(IW_FIELDS.primaryChannel);
  const dsChannel = fields.read(IW_FIELDS.dsChannel);
  const side = fields.read(IW_FIELDS.secondarySide) ?? "none";
  const isNarrow = fields.read(IW_FIELDS.stationWidth) === "20 MHz";
  if (frequencyMhz === null || fields.fault !== null) return null;
  const channel = primaryChannel ?? dsChannel ?? wifiChannelAtMhz(frequencyMhz);
  if (channel === null) {
    const expected = "the centre of a Wi-Fi channel from 1 to 14";
    fields.fault = { code: "bad-cell", column: "freq", value: String(frequencyMhz), expected };
    return null;
  }
  const primaryMhz = wifiChannelCentreMhz(channel)!;
  if (side === "none" || isNarrow) return { channel, centreMhz: primaryMhz, widthMhz: 20 };
  return { channel, centreMhz: primaryMhz + (side === "above" ? 10 : -10), widthMhz: 40 };
}
