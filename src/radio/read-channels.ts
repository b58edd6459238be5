import { rasterChannels } from "./channel-plan.js";
import type { HopPlan, RadioChannel } from "./profile.js";
import { joined, knownEntries } from "./profile-keys.js";
import { isMapping } from "./profile-report.js";
import type { Report } from "./profile-report.js";
import { numberFrom, wholeFrom } from "./profile-values.js";
import type { ValueReader } from "./profile-values.js";
import { readFigure } from "./read-figure.js";

const CHANNELS_WORDS =
  "a list of { channel, centreMhz }, or { channel, centreMhz, spacingMhz, channelCount } of an even raster, its lowest channel first";
const readNumber = wholeFrom([0, 9999], "a channel number");
const readCentre = numberFrom([2400, 2500], "a centre in MHz");
const MOST_CHANNELS = 1000;

/** A channel plan: every channel written out, or an even raster. */
export const readChannels: ValueReader<readonly RadioChannel[]> = (raw, path, report) => {
  if (isMapping(raw)) return readRaster(raw, path, report);
  if (!Array.isArray(raw) || raw.length === 0 || raw.length > MOST_CHANNELS) {
    report(path, raw, `${CHANNELS_WORDS}, up to ${MOST_CHANNELS} channels`);
    return undefined;
  }
  const channels = raw.map((entry: unknown, index) => readChannel(entry, `${path}[${index}]`, report));
  const seen = new Set<number>();
  for (const [index, channel] of channels.entries()) {
    if (channel === undefined) return undefined;
    if (seen.has(channel.channel)) {
      report(`${path}[${index}].channel`, channel.channel, "each channel number once", "contradiction");
      return undefined;
    }
    seen.add(channel.channel);
  }
  return channels as RadioChannel[];
};

function readChannel(raw: unknown, path: string, report: Report): RadioChannel | undefined {
  if (!isMapping(raw)) {
    report(path, raw, "{ channel, centreMhz }");
    return undefined;
  }
  const entries = knownEntries(raw, ["channel", "centreMhz"], path, report);
  const channel = readNumber(entries.get("channel"), joined(path, "channel"), report);
  const centreMhz = readCentre(entries.get("centreMhz"), joined(path, "centreMhz"), report);
  return channel === undefined || centreMhz === undefined ? undefined : { channel, centreMhz };
}

function readRaster(
  raw: Readonly<Record<string, unknown>>,
  path: string,
  report: Report,
): RadioChannel[] | undefined {
  const keys = ["channel", "centreMhz", "spacingMhz", "channelCount"];
  const entries = knownEntries(raw, keys, path, report);
  const read = (key: string, reader: ValueReader<number>): number | undefined =>
    reader(entries.get(key), joined(path, key), report);
  const channel = read("channel", readNumber);
  const centreMhz = read("centreMhz", readCentre);
  const spacingMhz = read("spacingMhz", numberFrom([0.001, 100], "a spacing in MHz"));
  const channelCount = read("channelCount", wholeFrom([1, MOST_CHANNELS], "a number of channels"));
  if (channel === undefined || centreMhz === undefined) return undefined;
  if (spacingMhz === undefined || channelCount === undefined) return undefined;
  const channels = rasterChannels({ channel, centreMhz, spacingMhz, channelCount });
  const lastCentreMhz = channels[channels.length - 1]!.centreMhz;
  return readCentre(lastCentreMhz, path, report) === undefined ? undefined : channels;
}

/** Null for a fixed channel, or `{ avoids, leastHopCount }`. */
export const readHopping: ValueReader<HopPlan> = (raw, path, report) => {
  if (!isMapping(raw)) {
    report(path, raw, "null for a fixed channel, or { avoids, leastHopCount }");
    return undefined;
  }
  const entries = knownEntries(raw, ["avoids", "leastHopCount"], path, report);
  const avoids = entries.get("avoids");
  if (typeof avoids !== "boolean") report(joined(path, "avoids"), avoids, "true or false");
  const readCount = wholeFrom([1, MOST_CHANNELS], "hop frequencies");
  const countPath = joined(path, "leastHopCount");
  const leastHopCount = readFigure(entries.get("leastHopCount"), countPath, readCount, report);
  return typeof avoids !== "boolean" || leastHopCount === undefined ? undefined : { avoids, leastHopCount };
};
