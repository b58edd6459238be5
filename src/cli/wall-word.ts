import { ArgumentError } from "../issues/index.js";
import { findMaterial, wallLoss } from "../propagation/index.js";
import type { WallCrossing, WallLayer } from "../propagation/index.js";
import type { SiteWall } from "../venue/index.js";
import { badOption, plainNumber } from "./words.js";

const EXPECTED =
  "MATERIAL:THICKNESS, layers joined by +, or a loss such as 6dB; then @DEGREES if not square on";
const EXAMPLE = "concrete:200mm";
const M_PER_UNIT: Readonly<Record<string, number>> = { mm: 0.001, cm: 0.01, m: 1, in: 0.0254 };

/**
 * A wall as typed: `concrete:200mm`, layers as `plasterboard:12mm+air:100mm+plasterboard:12mm`, or a loss as
 * `6dB`; `@45` says at how many degrees from square on it is crossed.
 * @throws {CliError} exit 64 where it is none; an unknown material with the nearest known
 */
export function wallWord(flag: string, text: string): SiteWall {
  const [body = "", angle, ...rest] = text.trim().split("@");
  const incidenceDeg = angle === undefined ? 0 : plainNumber(angle);
  if (rest.length > 0 || !(incidenceDeg >= 0 && incidenceDeg < 90))
    throw badOption(flag, "an angle from 0 to below 90 degrees after @", text, `${EXAMPLE}@45`);
  const crossing: WallCrossing = { ...bodyOf(flag, body), incidenceDeg };
  try {
    wallLoss([crossing]);
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    throw badOption(flag, error.expected, text, EXAMPLE);
  }
  return { words: text.trim(), crossing };
}

function bodyOf(flag: string, body: string): WallCrossing {
  const loss = /^(.*?)\s*db$/i.exec(body.trim());
  if (loss !== null && !body.includes(":")) {
    const lossDb = plainNumber(loss[1]!);
    if (lossDb >= 0 && lossDb <= 200) return { lossDb };
    throw badOption(flag, "a loss from 0 to 200 dB", body, "6dB");
  }
  return { layers: body.split("+").map((layer) => layerOf(flag, layer.trim())) };
}

function layerOf(flag: string, layer: string): WallLayer {
  const [, material, thickness] = /^([^:]+):([^:]+)$/.exec(layer) ?? [];
  if (material === undefined || thickness === undefined) throw badOption(flag, EXPECTED, layer, EXAMPLE);
  try {
    findMaterial(material);
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    const expected = error.expected.replace(", or { a, b, c, d }", "");
    const near = /did you mean (\S+)\?/.exec(expected)?.[1] ?? "concrete";
    throw badOption(flag, expected, material, `${near}:${thickness}`);
  }
  return { material, thicknessM: thicknessOf(flag, material, thickness) };
}

function thicknessOf(flag: string, material: string, text: string): number {
  const [, figure = "", unit = ""] = /^(.*?)\s*(mm|cm|m|in)$/i.exec(text.trim()) ?? [];
  const thicknessM = plainNumber(figure) * (M_PER_UNIT[unit.toLowerCase()] ?? NaN);
  if (thicknessM > 0 && thicknessM <= 100) return thicknessM;
  throw badOption(flag, "a thickness > 0 with its unit: mm, cm, m or in", text, `${material}:200mm`);
}
