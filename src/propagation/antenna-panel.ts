import { ArgumentError, requireFinite } from "../issues/index.js";
import { dbToRatio } from "../units/index.js";
import type { PanelAntenna } from "./antenna.js";

/** A panel's pattern as figures: exponents of the lobe, its floor, and the share of power that it radiates. */
export interface PanelLobe {
  readonly azimuthExponentRatio: number;
  readonly elevationExponentRatio: number;
  /** Floor over peak. */
  readonly floorRatio: number;
  /** Power radiated over power fed, by the integral of the pattern. */
  readonly radiatedRatio: number;
}

const ASSUMED_FRONT_TO_BACK_DB = 20;
/** Gain and beamwidths of a data sheet are rounded: 1 dB too much is let pass (assumed). */
const MOST_RADIATED_RATIO = dbToRatio(1);

/**
 * The lobe of a panel. In front: (1 − f)·cosᵠα + f of the peak, α off the boresight, f the floor, the
 * exponent q = q_az·cos²φ + q_el·sin²φ about the boresight, so chosen that the half-power directions are the
 * stated ones; behind: f. The lobe holds 2π/√((1 + q_az)(1 + q_el)) steradians, so the share radiated is
 * gain·((1 − f)/(2·√((1 + q_az)(1 + q_el))) + f): what is left of 1 is loss within the panel.
 * @throws {ArgumentError} when a figure is out of its range, or when the gain is more than 1 dB above what
 *   beams so wide can have
 * @source derived; cosᵠ lobes: C. A. Balanis, Antenna Theory, section 2.6 (from memory)
 */
export function panelLobe(panel: PanelAntenna): PanelLobe {
  const { gainDbi, azimuthBeamwidthDeg, elevationBeamwidthDeg } = panel;
  const frontToBackDb = panel.frontToBackDb ?? ASSUMED_FRONT_TO_BACK_DB;
  requireFinite("gainDbi", gainDbi);
  if (!(frontToBackDb >= 6 && frontToBackDb <= 60))
    throw new ArgumentError("frontToBackDb", "a number from 6 to 60", frontToBackDb);
  const floorRatio = dbToRatio(-frontToBackDb);
  const azimuthExponentRatio = lobeExponentRatio("azimuthBeamwidthDeg", azimuthBeamwidthDeg, floorRatio);
  const elevationExponentRatio = lobeExponentRatio(
    "elevationBeamwidthDeg",
    elevationBeamwidthDeg,
    floorRatio,
  );
  const lobe = (1 - floorRatio) / (2 * Math.sqrt((1 + azimuthExponentRatio) * (1 + elevationExponentRatio)));
  const radiatedRatio = dbToRatio(gainDbi) * (lobe + floorRatio);
  if (radiatedRatio > MOST_RADIATED_RATIO) {
    const mostDbi = -10 * Math.log10(lobe + floorRatio);
    throw new ArgumentError("gainDbi", `at most about ${mostDbi.toFixed(1)} dBi with beams so wide`, gainDbi);
  }
  return { azimuthExponentRatio, elevationExponentRatio, floorRatio, radiatedRatio };
}

/**
 * A panel's power in a direction over its peak.
 * @param forwardRatio @param sideRatio @param upRatio the direction's parts along the panel's own axes
 */
export function panelPatternRatio(
  lobe: PanelLobe,
  forwardRatio: number,
  sideRatio: number,
  upRatio: number,
): number {
  if (forwardRatio <= 0) return lobe.floorRatio;
  const across = sideRatio ** 2 + upRatio ** 2;
  if (across === 0) return 1;
  const weighted = lobe.azimuthExponentRatio * sideRatio ** 2 + lobe.elevationExponentRatio * upRatio ** 2;
  return lobe.floorRatio + (1 - lobe.floorRatio) * forwardRatio ** (weighted / across);
}

/** @returns the exponent q with (1 − f)·cosᵠ(half the beamwidth) + f = ½ */
function lobeExponentRatio(argument: string, beamwidthDeg: number, floorRatio: number): number {
  if (!(beamwidthDeg > 0 && beamwidthDeg < 180))
    throw new ArgumentError(argument, "a number above 0 and below 180", beamwidthDeg);
  const edge = (1 / 2 - floorRatio) / (1 - floorRatio);
  return Math.log(edge) / Math.log(Math.cos((beamwidthDeg * Math.PI) / 360));
}
