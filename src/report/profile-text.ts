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
  return `${[...table, "", "Generic figures: enter your radio's own (profiles NAME --json > mine.json, edit, --profile mine.json)."].join("\n")}\n`;
}

/** One profile, each figure with its status and source. */
export function profileText(profile: RadioProfile, style: TextStyle): string {
  const figures = Object.entries(profile).filter((entry): entry is [string, Figure<unknown>] =>
    isFigure(entry[1]),
  );
  const { channels, channelsOrigin } = profile;
  const span = `${channels[0]?.centreMhz} to ${channels[channels.length - 1]?.centreMhz} MHz`;
  const blocks = figures.flatMap(([key, figure]) => [
    style.pen.strong(`${key.padEnd(30)} ${valueText(figure.value)}`),
    ...wrapped(`${figure.status}: ${figure.source}`, style.columnCount - 4).map((line) => `    ${line}`),
  ]);
  const head = [
    style.pen.strong(`${profile.name}: ${profile.title}`),
    ...wrapped(
      `${channels.length} channels, ${span} (${channelsOrigin.status}: ${channelsOrigin.source})`,
      style.columnCount,
    ),
    ...(profile.generic ? ["Generic figures: enter your radio's own."] : []),
  ];
  return `${[...head, "", ...blocks].join("\n")}\n`;
}

function isFigure(value: unknown): value is Figure<unknown> {
  return (
    typeof value === "object" && value !== null && "value" in value && "status" in value && "source" in value
  );
}

function valueText(value: unknown): string {
  if (value === null) return "unknown";
  if (typeof value === "string" || typeof value === "number") return String(value);
  const { points } = value as { readonly points: readonly (readonly number[])[] };
  return points.map(([offsetMhz, levelDb]) => `${offsetMhz}:${levelDb}`).join(" ");
}
