import { antennaPairOf, antennaPeakGainDbi, moveAside } from "../propagation/index.js";
import type { MoveAside, WallCaveat } from "../propagation/index.js";
import { placedAt } from "./link-site.js";
import type { ReferenceSetting } from "./reference-setting.js";
import type { SiteLink, SiteRow } from "./site-link.js";

/** A link whose end lies within a null of the other end's antenna. */
export interface NullWarning {
  /** Whose antenna has its null there. */
  readonly code: "null-of-transmitter" | "null-of-receiver";
  readonly distanceM: number;
  readonly floorDistanceM: number | null;
  /** The gain there; −Infinity in a true null. */
  readonly gainDbi: number;
  readonly peakGainDbi: number;
  /** How far the transmitter is moved aside. */
  readonly moveM: number;
  /** What that brings. */
  readonly move: MoveAside;
}

/** A wall whose loss was stretched or held. */
export interface WallWarning {
  readonly code: WallCaveat;
  /** The wall as it was named. */
  readonly wall: string;
  readonly lossDb: number;
}

/** What a link is warned of, as data. */
export type LinkWarning = NullWarning | WallWarning;

const MOVE_M = 1;

/** Rows within a null, nearest first and each distance once, with what moving aside brings; then walls. */
export function linkWarnings(
  setting: ReferenceSetting,
  link: SiteLink,
  rows: readonly SiteRow[],
): LinkWarning[] {
  const byDistance = new Map(rows.map((row) => [row.floorDistanceM ?? row.distanceM, row]));
  const rising = [...byDistance].sort(([one], [other]) => one - other);
  return [
    ...rising.flatMap(([distanceM, row]) => nullWarnings(setting, distanceM, row)),
    ...link.walls.crossings.flatMap(({ caveats, lossDb }, index) =>
      caveats.map((code) => ({ code, wall: setting.site.walls[index]!.words, lossDb })),
    ),
  ];
}

function nullWarnings(setting: ReferenceSetting, distanceM: number, row: SiteRow): NullWarning[] {
  if (!row.txNull && !row.rxNull) return [];
  const { site, profile } = setting;
  const query = placedAt(site, profile, distanceM);
  const pair = antennaPairOf(query);
  const move = withBareGains(moveAside(pair, MOVE_M), query);
  const told = { distanceM: row.distanceM, floorDistanceM: row.floorDistanceM, moveM: MOVE_M, move };
  const { txGainDbi, rxGainDbi } = row;
  const txPeakDbi = antennaPeakGainDbi(pair.transmitter);
  const rxPeakDbi = antennaPeakGainDbi(pair.receiver);
  return [
    ...(row.txNull
      ? [{ code: "null-of-transmitter" as const, ...told, gainDbi: txGainDbi, peakGainDbi: txPeakDbi }]
      : []),
    ...(row.rxNull
      ? [{ code: "null-of-receiver" as const, ...told, gainDbi: rxGainDbi, peakGainDbi: rxPeakDbi }]
      : []),
  ];
}

/** An end whose gain alone is known stood as isotropic. */
function withBareGains(move: MoveAside, { transmitter, receiver }: ReturnType<typeof placedAt>): MoveAside {
  const bareDb = [transmitter, receiver]
    .filter(({ antenna }) => antenna === null)
    .reduce((sum, { gainDbi }) => sum + gainDbi, 0);
  return { ...move, afterDb: move.afterDb === null ? null : move.afterDb + bareDb };
}
