import { ArgumentError, printable } from "../issues/index.js";
import { antennaRadiatedRatio } from "../propagation/index.js";
import type { Antenna, AntennaMount } from "../propagation/index.js";
import { nearestWord } from "../radio/index.js";
import type { CliError } from "./exit.js";
import { badOption, plainNumber } from "./words.js";

const KINDS = ["isotropic", "dipole", "collinear", "panel"] as const;
const MOUNTINGS = ["upright", "sideways", "hanging"] as const;
const EXPECTED = "isotropic, dipole, collinear:GAIN or panel:GAIN:AZIMUTH:ELEVATION";
const EXAMPLE = "collinear:8,hanging,tilt=5";

/**
 * An antenna as typed: `isotropic`, `dipole`, `collinear:GAIN` (dBi) or `panel:GAIN:AZ:EL` (dBi and beamwidths
 * in degrees), then, after commas, `upright`, `sideways` or `hanging`, `tilt=DEG`, `azimuth=DEG` (0: towards
 * the other end).
 * @throws {CliError} exit 64 where it is none
 */
export function antennaWord(flag: string, text: string): Antenna {
  const [kindText = "", ...parts] = text.split(",").map((part) => part.trim());
  const antenna = { ...kindOf(flag, kindText), ...mountOf(flag, parts) };
  try {
    antennaRadiatedRatio(antenna);
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    throw badOption(
      flag,
      `${FIGURES[error.argument] ?? error.argument} to be ${error.expected}`,
      text,
      EXAMPLE,
    );
  }
  return antenna;
}

/** What a figure of an antenna is called here. */
const FIGURES: Readonly<Record<string, string>> = {
  gainDbi: "the gain",
  azimuthBeamwidthDeg: "the azimuth beamwidth",
  elevationBeamwidthDeg: "the elevation beamwidth",
  tiltDeg: "tilt",
  azimuthDeg: "azimuth",
};

function kindOf(flag: string, text: string): Antenna {
  const [kind = "", ...figures] = text.split(":");
  const numbers = figures.map(plainNumber);
  const [gainDbi = NaN, azimuthBeamwidthDeg = NaN, elevationBeamwidthDeg = NaN] = numbers;
  const count = numbers.some(Number.isNaN) ? -1 : numbers.length;
  if ((kind === "isotropic" || kind === "dipole") && count === 0) return { kind };
  if (kind === "collinear" && count === 1) return { kind, gainDbi };
  if (kind === "panel" && count === 3) return { kind, gainDbi, azimuthBeamwidthDeg, elevationBeamwidthDeg };
  throw badKind(flag, kind, text);
}

function badKind(flag: string, kind: string, text: string): CliError {
  const near = KINDS.find((known) => known === kind) ?? nearestWord(kind, KINDS);
  const example = near === "panel" ? "panel:8:70:60" : near === "collinear" ? "collinear:8" : near;
  return badOption(flag, EXPECTED, text, example ?? EXAMPLE);
}

function mountOf(flag: string, parts: readonly string[]): AntennaMount {
  const mount: { -readonly [Key in keyof AntennaMount]: AntennaMount[Key] } = {};
  const told = new Set<string>();
  for (const part of parts) {
    const [key = "", figure, ...rest] = part.split("=");
    const mounting = MOUNTINGS.find((word) => word === part);
    const value = plainNumber(figure ?? "");
    const sort = mounting === undefined ? key : "mounting";
    if (told.has(sort)) throw badOption(flag, `one ${sort}`, parts.join(","), EXAMPLE);
    told.add(sort);
    if (mounting !== undefined) mount.mounting = mounting;
    else if (key === "tilt" && rest.length === 0 && Math.abs(value) <= 90) mount.tiltDeg = value;
    else if (key === "azimuth" && rest.length === 0 && Math.abs(value) <= 360) mount.azimuthDeg = value;
    else throw badMount(flag, part);
  }
  return mount;
}

function badMount(flag: string, part: string): CliError {
  const expected =
    "upright, sideways, hanging, tilt=DEG (-90 to 90) or azimuth=DEG (-360 to 360) after the antenna";
  const near = nearestWord(printable(part, 60), MOUNTINGS);
  return badOption(flag, expected, part, near === null ? EXAMPLE : `collinear:8,${near}`);
}
