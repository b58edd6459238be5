import { requireNonNegative, requirePositive } from "../issues/index.js";
import type { Antenna, Building, PlacedLinkQuery, Vector3, WallCrossing } from "../propagation/index.js";
import type { RadioProfile } from "../radio/index.js";

/**
 * Antennas, heights, walls and floors of a link whose length is one figure. The transmitter stands at
 * (0, 0), the receiver along +x from it; at each end azimuth 0° looks at the other end.
 */
export interface LinkSite {
  /** Null: the profile's gain in every direction. */
  readonly txAntenna: Antenna | null;
  /** Null: the profile's gain in every direction. */
  readonly rxAntenna: Antenna | null;
  /** Above the floor; distances then run along the floor. Null: the ends are level with each other. */
  readonly heights: LinkHeights | null;
  /** They stand in the path at every distance. */
  readonly walls: readonly SiteWall[];
  /** Null: both ends on one floor. */
  readonly floors: SiteFloors | null;
}

/** Both ends above the floor, m. */
export interface LinkHeights {
  readonly txHeightM: number;
  readonly rxHeightM: number;
}

/** A wall in the path. */
export interface SiteWall {
  /** As it was named, e.g. `concrete:200mm`. */
  readonly words: string;
  readonly crossing: WallCrossing;
}

/** Floors between the ends, by ITU-R P.1238. */
export interface SiteFloors {
  readonly building: Building;
  readonly floorCount: number;
}

/** Nothing named: level ends, the profile's gains all round, nothing between. */
export const OPEN_SITE: LinkSite = {
  txAntenna: null,
  rxAntenna: null,
  heights: null,
  walls: [],
  floors: null,
};

/** The straight line between the ends, m, at a distance that the site counts along the floor or, level, as it is. */
export function pathLengthM({ heights }: LinkSite, distanceM: number): number {
  return heights === null ? distanceM : Math.hypot(distanceM, heights.rxHeightM - heights.txHeightM);
}

/** The link's ends at a distance. */
export function placedAt(site: LinkSite, profile: RadioProfile, distanceM: number): PlacedLinkQuery {
  const { txAntenna, rxAntenna, walls } = site;
  return {
    transmitter: { antenna: txAntenna, gainDbi: profile.txGainDbi.value },
    receiver: { antenna: turnedRound(rxAntenna), gainDbi: profile.rxGainDbi.value },
    ...placesAt(site, distanceM),
    crossings: walls.map(({ crossing }) => crossing),
  };
}

/**
 * Where the ends are, seen from the receiver's place on the plan: only the transmitter moves.
 * @throws {ArgumentError} when the distance is not > 0 or, along the floor, not ≥ 0
 */
export function placesAt(
  { heights }: LinkSite,
  distanceM: number,
): { readonly transmitterAtM: Vector3; readonly receiverAtM: Vector3 } {
  if (heights === null) requirePositive("distanceM", distanceM);
  else requireNonNegative("distanceM", distanceM);
  const { txHeightM, rxHeightM } = heights ?? { txHeightM: 0, rxHeightM: 0 };
  return {
    transmitterAtM: { x: -distanceM, y: 0, z: txHeightM },
    receiverAtM: { x: 0, y: 0, z: rxHeightM },
  };
}

function turnedRound(antenna: Antenna | null): Antenna | null {
  return antenna === null ? null : { ...antenna, azimuthDeg: 180 + (antenna.azimuthDeg ?? 0) };
}
