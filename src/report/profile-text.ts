import type { Figure, RadioProfile } from "../radio/index.js";
import type { TextStyle } from "./pen.js";
import { tableLines, wrapped } from "./text-layout.js";

/** The built-in profiles side by side. */
export function profilesText(profiles: readonly RadioProfile[], style: TextStyle): string {
  const rows = profiles.map(({ name, channels, hopping, title }) => [
    name,
    `${channels.length}`,
    hopping === null ? "fixed" : hopping.avoids ? "hops, can avoid" : "hops",
    title,
  ]);
  const heads = ["profile", "channels", "channel", "what it is"];
  const table = tableLines(
    heads.map((head) => ({ head, align: head === "channels" ? "right" : "left" })),
    rows,
    style.columnCount,
  );
  return `${[...table, "", "Generic figures; enter your own: stillband profiles NAME --template -o my.yaml,", "edit it, then --profile my.yaml."].join("\n")}\n`;
}

/** One profile, each figure with its status and source. */
export function profileText(profile: RadioProfile, style: TextStyle): string {
  const figures = Object.entries(profile).filter((entry): entry is [string, Figure<unknown>] =>
    isFigure(entry[1]),
  );
  const { channels, channelsOrigin } = profile;
  const span = `${channels[0]?.centreMhz} to ${channels[channels.length - 1]?.centreMhz} MHz`;
  const blocks = figures.flatMap(([key, figure]) => [
    ...wrapped(`${key.padEnd(30)} ${valueText(figure.value)}`, style.columnCount, " ".repeat(31)).map(
      style.pen.strong,
    ),
    ...wrapped(`${figure.status}: ${bareSource(figure)}`, style.columnCount - 4).map((line) => `    ${line}`),
  ]);
  const head = [
    ...wrapped(`${profile.name}: ${profile.title}`, style.columnCount).map(style.pen.strong),
    ...wrapped(
      `${channels.length} channels, ${span} (${channelsOrigin.status}: ${channelsOrigin.source})`,
      style.columnCount,
    ),
    ...(profile.generic ? ["Generic figures: enter your radio's own."] : []),
  ];
  return `${[...head, "", ...blocks].join("\n")}\n`;
}

/** Is it a figure with its origin? */
export function isFigure(value: unknown): value is Figure<unknown> {
  return (
    typeof value === "object" && value !== null && "value" in value && "status" in value && "source" in value
  );
}

/** The source without a status that is printed before it anyway. */
export function bareSource({ status, source }: Figure<unknown>): string {
  return source.replace(new RegExp(`^${status}[:;,]? `), "");
}

function valueText(value: unknown): string {
  if (value === null) return "unknown";
  if (typeof value === "string" || typeof value === "number") return String(value);
  return shapeText((value as { readonly points: readonly (readonly [number, number])[] }).points);
}

/** A shape in words: a mirrored one by its right half, "0 dB to ±0.5 MHz, -11 to ±1.5". */
function shapeText(points: readonly (readonly [number, number])[]): string {
  const right = points.filter(([offsetMhz]) => offsetMhz > 0);
  const left = points.filter(([offsetMhz]) => offsetMhz < 0).reverse();
  const mirrored =
    right.length === left.length &&
    right.every(([mhz, db], index) => left[index]![0] === -mhz && left[index]![1] === db);
  const shown = mirrored ? right : points;
  return shown
    .map(([mhz, db]) => `${db} at ${mirrored ? "±" : ""}${mhz}`)
    .join(", ")
    .concat(" (dB, MHz)");
}
