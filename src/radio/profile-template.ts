import type { Shape } from "../band/index.js";
import { builtInProfiles } from "./built-in-profiles.js";
import { figureExpectation, figureMeanings } from "./figure-meanings.js";
import type { Figure, RadioChannel, RadioProfile } from "./profile.js";
import { figureKeys } from "./profile-figures.js";
import { stepShape } from "./step-shape.js";
import type { ShapeStep } from "./step-shape.js";
import { commentLines, yamlFlow, yamlText } from "./template-yaml.js";

/**
 * A profile as YAML to fill in: every figure with what it is, what it may be, its value, status and source. As
 * it stands it is read back with exactly this profile's figures. A changed value counts as the user's own.
 * A built-in profile is named `my-radio`.
 * @returns text of YAML, ending in a newline
 * @example profileTemplate(findProfile("raster-13")).includes("tx_power_dbm:"); // => true
 */
export function profileTemplate(profile: RadioProfile): string {
  const builtIn = builtInProfiles.some(({ name }) => name === profile.name);
  const [name, title] = builtIn
    ? ["my-radio", `Your radio, begun from ${profile.name}`]
    : [profile.name, profile.title];
  return [
    ...commentLines(HEAD),
    "",
    `name: ${yamlText(name)}`,
    `title: ${yamlText(title)}`,
    ...(profile.generic ? [] : ["generic: false"]),
    "",
    ...channelLines(profile),
    "",
    ...hoppingLines(profile),
    ...figureKeys.flatMap((key) => ["", ...figureLines(key, profile[key])]),
    "",
  ].join("\n");
}

const HEAD = `A radio's figures for --profile. Put your data sheet's figure in place of a value:
it counts as yours from then on, whatever its status and source still say. Or write
the bare value behind the key, as in tx_power_dbm: 20. Keys left out are missed,
unless the line based_on: raster-13 (or another built-in profile) stands for them.`;

const CHANNEL_WORDS = `Your radio's channels, numbers as its display shows them. An even raster as below, or one by one:
channels: [{ channel: 1, centre_mhz: 2412 }, { channel: 2, centre_mhz: 2439.5 }]
2400 to 2500 MHz, the lowest first; leave channels_origin out where they are your own.`;

function channelLines({ channels, channelsOrigin }: RadioProfile): string[] {
  const { status, source } = channelsOrigin;
  return [
    ...commentLines(CHANNEL_WORDS),
    ...channelPlanLines(channels),
    "channels_origin:",
    `  status: ${status}`,
    `  source: ${yamlText(source)}`,
  ];
}

function channelPlanLines(channels: readonly RadioChannel[]): string[] {
  const raster = rasterOf(channels);
  if (raster !== null)
    return ["channels:", ...Object.entries(raster).map(([key, value]) => `  ${key}: ${value}`)];
  const entry = ({ channel, centreMhz }: RadioChannel): string =>
    `  - { channel: ${channel}, centre_mhz: ${centreMhz} }`;
  return ["channels:", ...channels.map(entry)];
}

/** The even raster that gives exactly these channels; null where none does. */
function rasterOf(channels: readonly RadioChannel[]): Record<string, number> | null {
  const [first, second] = channels;
  if (first === undefined || second === undefined) return null;
  const spacingMhz = second.centreMhz - first.centreMhz;
  const even = channels.every(
    ({ channel, centreMhz }, index) =>
      channel === first.channel + index && centreMhz === first.centreMhz + index * spacingMhz,
  );
  if (!even || !(spacingMhz > 0)) return null;
  return {
    channel: first.channel,
    centre_mhz: first.centreMhz,
    spacing_mhz: spacingMhz,
    channel_count: channels.length,
  };
}

function hoppingLines({ hopping }: RadioProfile): string[] {
  const words = commentLines(
    "null for a fixed channel. A hopping radio: may it keep ranges out, and how many frequencies must stay?",
  );
  if (hopping === null)
    return [...words, "hopping: null", "# hopping: { avoids: true, least_hop_count: 15 }"];
  return [
    ...words,
    "hopping:",
    `  avoids: ${hopping.avoids}`,
    "  least_hop_count:",
    ...originLines(hopping.leastHopCount, "    "),
  ];
}

function figureLines(key: (typeof figureKeys)[number], figure: Figure<unknown>): string[] {
  return [
    ...commentLines(`${figureMeanings[key]}.\nTakes ${figureExpectation(key)}.`),
    `${snakeCase(key)}:`,
    ...originLines(figure, "  "),
  ];
}

function originLines({ value, status, source }: Figure<unknown>, indent: string): string[] {
  const lines = [`value: ${valueText(value)}`, `status: ${status}`, `source: ${yamlText(source)}`];
  return lines.map((line) => indent + line);
}

function valueText(value: unknown): string {
  if (typeof value !== "object" || value === null) return yamlFlow(value);
  const shape = value as Shape;
  const steps = stepsOf(shape);
  return steps === null ? `{ points: ${yamlFlow(shape.points)} }` : `{ steps: ${yamlFlow(steps)} }`;
}

/** The steps of a symmetric staircase; null for any other shape. */
function stepsOf(shape: Shape): ShapeStep[] | null {
  const steps = shape.points.filter(([mhz]) => mhz > 0).filter((_, index) => index % 2 === 0);
  const rising = steps.every(([mhz], index) => mhz > (steps[index - 1]?.[0] ?? 0));
  if (steps.length === 0 || !rising) return null;
  return JSON.stringify(stepShape(steps)) === JSON.stringify(shape) ? steps : null;
}

function snakeCase(key: string): string {
  return key.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}
