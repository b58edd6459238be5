import type { LinkPlan, NullWarning } from "../venue/index.js";
import { chosenLengths, dB, fixed } from "./number-format.js";
import type { ChannelReport } from "./channel-report.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { bullets, section } from "./section.js";

/** Rows in a null that are told one by one. */
const MOST_NULLS = 3;

/** The section that tells them; none where there is nothing to tell. */
export function warningSection({ plan }: ChannelReport, style: TextStyle): string[][] {
  const lines = warningLines(plan.link, style.units);
  return lines.length === 0 ? [] : [section("Warnings", style, bullets(lines, style))];
}

/** What a link is warned of: places in an antenna's null, with the cure, and walls whose loss was stretched. */
export function warningLines({ warnings }: LinkPlan, unit: LengthUnit): string[] {
  const nulls = new Map<number, NullWarning[]>();
  const walls: string[] = [];
  for (const warning of warnings)
    if ("wall" in warning) walls.push(wallLine(warning.code, warning.wall, warning.lossDb));
    else nulls.set(warning.distanceM, [...(nulls.get(warning.distanceM) ?? []), warning]);
  const told = [...nulls.values()].slice(0, MOST_NULLS).map((each) => nullLine(each, unit));
  const more = nulls.size - told.length;
  return [
    ...told,
    ...(more > 0 ? [`The same at ${more} further ${more === 1 ? "distance" : "distances"}.`] : []),
    ...walls,
  ];
}

function nullLine(each: readonly NullWarning[], unit: LengthUnit): string {
  const [{ distanceM, floorDistanceM }] = each as readonly [NullWarning];
  const where =
    floorDistanceM === null
      ? chosenLengths(distanceM, unit)
      : `${chosenLengths(floorDistanceM, unit)} along the floor`;
  const whose = each.map(({ code, gainDbi, peakGainDbi }) => {
    const gain = gainDbi === -Infinity ? "no gain at all" : `${fixed(gainDbi, 1)} dBi`;
    const depth = `(${gain} of ${fixed(peakGainDbi, 1)})`;
    return code === "null-of-transmitter"
      ? `the receiver sits in the null of the transmitter's antenna ${depth}`
      : `the transmitter sits in the null of the receiver's antenna ${depth}`;
  });
  return `At ${where} ${whose.join(" and ")}; ${cureWords(each[0]!, unit)}.`;
}

function cureWords({ moveM, move }: NullWarning, unit: LengthUnit): string {
  const moving = `moving the transmitter ${chosenLengths(moveM, unit)} aside`;
  if (move.reason === "too-close") return `${moving} would end too near the receiver to tell`;
  if (move.reason === "in-true-null")
    return move.afterDb === null || move.afterDb === -Infinity
      ? `${moving} does not help: turn the antenna`
      : `${moving} brings a signal: ${fixed(move.afterDb, 1)} dBi of both antennas`;
  if (move.helpDb === null || move.helpDb < 0.5) return `${moving} does not help: turn the antenna`;
  if (move.helpDb < 1) return `${moving} helps by less than 1 dB`;
  return `${moving} helps by ${fixed(Math.floor(move.helpDb + 1e-9), 0)} dB`;
}

function wallLine(code: string, wall: string, lossDb: number): string {
  return code === "opaque-capped"
    ? `Wall ${wall}: metal; its loss is held at ${dB(lossDb)}, as gaps and edges let more through than the slab.`
    : `Wall ${wall}: its material was measured at other frequencies; the loss is carried over.`;
}
