import { expect, test } from "vitest";
import { antennaWords } from "../../src/propagation/index.js";
import type { Antenna } from "../../src/propagation/index.js";

const panel: Antenna = { kind: "panel", gainDbi: 8, azimuthBeamwidthDeg: 75, elevationBeamwidthDeg: 60 };

// The half-wave dipole's 2.15 dBi: 10·log10(1.6409), C. A. Balanis, Antenna Theory, section 4.6 (from memory).
test.each<[Antenna, string]>([
  [{ kind: "isotropic", tiltDeg: 10 }, "isotropic"],
  [{ kind: "dipole" }, "half-wave dipole 2.15 dBi, upright"],
  [
    { kind: "dipole", mounting: "sideways", azimuthDeg: 90 },
    "half-wave dipole 2.15 dBi, sideways, azimuth 90°",
  ],
  [{ kind: "collinear", gainDbi: 5, mounting: "hanging" }, "collinear 5 dBi, hanging"],
  [{ ...panel, tiltDeg: 20 }, "panel 8 dBi, 75° x 60°, upright, tilt 20°"],
  [{ ...panel, tiltDeg: -5, azimuthDeg: 180 }, "panel 8 dBi, 75° x 60°, upright, tilt -5°, azimuth 180°"],
])("%o is told with its figures, its mounting, and the angles that are not 0", (antenna, words) => {
  expect(antennaWords(antenna)).toBe(words);
});
