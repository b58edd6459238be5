import type { Antenna } from "../propagation/index.js";
import { antennaPractice } from "./antenna-practice.js";
import type { PracticeCheck, PracticeFacts } from "./antenna-practice.js";
import type { LinkHeights } from "./link-site.js";
import type { ReferenceSetting } from "./reference-setting.js";

/** {@link antennaPractice} with what a setting decides; the rest is to be looked at on site. */
export function sitePractice({ site, profile, distanceM }: ReferenceSetting): PracticeCheck[] {
  const { txAntenna, rxAntenna, heights, walls, floors } = site;
  const parted = walls.length > 0 || (floors?.floorCount ?? 0) > 0;
  const facts: PracticeFacts = {
    ...(heights !== null && { txHeightM: heights.txHeightM }),
    ...(parted && { txInRoom: false, txInSight: false }),
    ...(isOverhead(heights, distanceM) && { txUnderLuminaire: true }),
    ...(profile.enclosure.value === "closed-metal" && { rxToMetalM: 0 }),
    allVertical: bothVertical(txAntenna, rxAntenna),
  };
  return antennaPractice(facts);
}

/** The receiver within 30° of straight above; further off, another luminaire may still hang there. */
function isOverhead(heights: LinkHeights | null, floorM: number): boolean {
  if (heights === null) return false;
  return floorM < (heights.rxHeightM - heights.txHeightM) * Math.tan(Math.PI / 6);
}

/** One that lies or leans breaks it, whatever the other does; one that isn't known leaves it open. */
export function bothVertical(...antennas: readonly (Antenna | null)[]): boolean | undefined {
  const each = antennas.map((antenna) => (antenna === null ? undefined : isVertical(antenna)));
  if (each.includes(false)) return false;
  return each.includes(undefined) ? undefined : true;
}

/** A panel that looks down a little stays vertical as seen from its beam; an isotropic one has no polarisation. */
function isVertical(antenna: Antenna): boolean | undefined {
  if (antenna.kind === "isotropic") return undefined;
  if (antenna.kind === "panel" && antenna.polarisation === "circular") return undefined;
  if (antenna.mounting === "sideways") return false;
  return antenna.kind === "panel" || Math.abs(antenna.tiltDeg ?? 0) <= UPRIGHT_WITHIN_DEG;
}

const UPRIGHT_WITHIN_DEG = 20;
