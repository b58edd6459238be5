import type { Antenna } from "./antenna.js";

/**
 * An antenna in words, with what its mounting was given as.
 * @returns words for a report
 * @example antennaWords({ kind: "collinear", gainDbi: 8, tiltDeg: 5 }); // => "collinear 8 dBi, upright, tilt 5°"
 */
export function antennaWords(antenna: Antenna): string {
  if (antenna.kind === "isotropic") return "isotropic";
  const { mounting = "upright", tiltDeg = 0, azimuthDeg = 0 } = antenna;
  return [
    kindWords(antenna),
    mounting,
    ...(tiltDeg === 0 ? [] : [`tilt ${tiltDeg}°`]),
    ...(azimuthDeg === 0 ? [] : [`azimuth ${azimuthDeg}°`]),
  ].join(", ");
}

function kindWords(antenna: Exclude<Antenna, { readonly kind: "isotropic" }>): string {
  switch (antenna.kind) {
    case "dipole":
      return "half-wave dipole 2.15 dBi";
    case "collinear":
      return `collinear ${antenna.gainDbi} dBi`;
    case "panel":
      return `panel ${antenna.gainDbi} dBi, ${antenna.azimuthBeamwidthDeg}° x ${antenna.elevationBeamwidthDeg}°`;
  }
}
