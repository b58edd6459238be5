import { antennaTermsFrom } from "./antenna-terms.js";
import type { AntennaTerms } from "./antenna-terms.js";
import { lengthOf, vectorFrom } from "./antenna-vector.js";
import type { Vector3 } from "./antenna-vector.js";
import type { Antenna } from "./antenna.js";
import type { WallCrossing, WallLoss } from "./wall-loss.js";
import { wallLoss } from "./wall-loss.js";

/** An end of a link. */
export interface LinkEnd {
  /** Null where only a gain is known: it then counts in every direction and meets any polarisation. */
  readonly antenna: Antenna | null;
  /** The gain where `antenna` is null; not looked at where there is one. */
  readonly gainDbi: number;
}

/** Two ends at their places and the walls between them. */
export interface PlacedLinkQuery {
  readonly transmitter: LinkEnd;
  readonly receiver: LinkEnd;
  readonly transmitterAtM: Vector3;
  readonly receiverAtM: Vector3;
  /** Walls that the straight line crosses; none if not given. */
  readonly crossings?: readonly WallCrossing[] | undefined;
  /** As in `polarisationLossDb`. */
  readonly polarisationCapDb?: number | undefined;
}

/** What two places bring to a link: lines of `LinkTerms`, and what they rest on. */
export interface PlacedLink extends AntennaTerms {
  /** In three dimensions. */
  readonly distanceM: number;
  readonly wallLossDb: number;
  /** Each wall's part, with its edition, and what was stretched. */
  readonly walls: WallLoss;
}

/**
 * The lines of a link budget that two places decide: 3-D distance, both gains towards each other,
 * polarisation loss and the loss of the walls between them.
 * @returns gains are −Infinity in a true null
 * @throws {ArgumentError} as `antennaTerms` and `wallLoss`
 * @validity as `antennaGainDbi` and `wallLoss`
 * @example const overhead = placedLink({ transmitter: { antenna: { kind: "dipole" }, gainDbi: 0 }, transmitterAtM: { x: 0, y: 0, z: 3 },
 *   receiver: { antenna: null, gainDbi: 2 }, receiverAtM: { x: 0, y: 4, z: 6 }, crossings: [{ lossDb: 3 }] });
 * [overhead.distanceM, overhead.rxGainDbi, overhead.wallLossDb]; // => [5, 2, 3]
 * const ends = { antenna: null, gainDbi: 0 };
 * const here = { x: 0, y: 0, z: 0 };
 * const from = placedLinkFrom({ transmitter: ends, receiver: ends, transmitterAtM: here, receiverAtM: here });
 * from({ x: 3, y: 4, z: 0 }).distanceM; // => 5
 */
export function placedLink(query: PlacedLinkQuery): PlacedLink {
  return placedLinkFrom(query)(query.transmitterAtM);
}

/**
 * {@link placedLink} with antennas and walls worked out once, for many places of the transmitter; the walls
 * are crossed from each of them alike.
 * @returns the link from any place of the transmitter
 * @throws {ArgumentError} as {@link placedLink}, in part when the place comes
 * @see {@link placedLink}
 */
export function placedLinkFrom(query: PlacedLinkQuery): (transmitterAtM: Vector3) => PlacedLink {
  const { transmitter, receiver, receiverAtM } = query;
  const walls = wallLoss(query.crossings ?? []);
  const termsAt = antennaTermsFrom(antennaPairOf(query));
  return (transmitterAtM) => {
    const terms = termsAt(transmitterAtM);
    return {
      ...terms,
      txGainDbi: transmitter.antenna === null ? transmitter.gainDbi : terms.txGainDbi,
      rxGainDbi: receiver.antenna === null ? receiver.gainDbi : terms.rxGainDbi,
      distanceM: lengthOf(vectorFrom(transmitterAtM, receiverAtM)),
      wallLossDb: walls.lossDb,
      walls,
    };
  };
}

/** The ends as antennas: a bare gain as an isotropic one. */
export function antennaPairOf({ transmitter, receiver, ...places }: PlacedLinkQuery): {
  readonly transmitter: Antenna;
  readonly receiver: Antenna;
  readonly transmitterAtM: Vector3;
  readonly receiverAtM: Vector3;
  readonly polarisationCapDb?: number | undefined;
} {
  return {
    transmitter: transmitter.antenna ?? { kind: "isotropic" },
    receiver: receiver.antenna ?? { kind: "isotropic" },
    transmitterAtM: places.transmitterAtM,
    receiverAtM: places.receiverAtM,
    polarisationCapDb: places.polarisationCapDb,
  };
}
