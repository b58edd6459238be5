import { brickWall, overlapDbByOffset, wifiChannelCentreMhz } from "../band/index.js";
import type { Shape } from "../band/index.js";
import { requireFinite } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import type { Radiated } from "./radiated.js";

/** An access point that the scan heard, at its loudest place. */
export interface HeardAccessPoint {
  readonly id: string;
  readonly levelDbm: number;
  /** Its primary. */
  readonly wifiChannel: number;
}

/** What our transmitter does to one Wi-Fi channel. */
export interface WifiNeighbour {
  readonly wifiChannel: number;
  readonly accessPointCount: number;
  /** The access point that hears us best, and our power in its 20 MHz while we send, dBm. */
  readonly strongestId: string;
  readonly strongestDbm: number;
  /** Access points that find the channel busy while we send. */
  readonly waitingCount: number;
  /** Share of the time that we send with our centre inside the 20 MHz. */
  readonly airtimeRatio: number;
  /** Share of the time that the access point which hears us best finds the channel busy by us. */
  readonly waitRatio: number;
}

/** An access point waits from this power in its 20 MHz up, whatever sends it, dBm. */
export const CCA_ENERGY_DBM = -62;
/** Power at an access point's antenna connector where nobody states it, dBm: assumed. */
export const ASSUMED_AP_POWER_DBM = 18;

/**
 * Our level at each access point that was heard, by reciprocity, for a transmitter where the scan was made:
 * level = our EIRP + (level as scanned − its power) + share of our spectrum in its 20 MHz. Its antenna counts
 * both ways, so the power is that at its connector; the scanning antenna is taken as 0 dBi.
 * @param emission spectrum of our transmitter
 * @param apPowerDbm at the access point's connector, dBm
 * @returns one for each Wi-Fi channel that holds an access point, rising
 * @throws {ArgumentError} when the power or a level is not finite
 * @source energy detection at -62 dBm in 20 MHz: IEEE 802.11-2020, as in the PHY defaults of ns-3 (commit 1406464)
 * @validity the far field and one path both ways; an access point's own noise and Wi-Fi preambles aside
 * @example
 * const ours = { centresMhz: [2437], bandwidthMhz: 1, eirpDbm: 20, airtimeRatio: 0.2, airtimeCapped: false };
 * wifiNeighbours(ours, brickWall(1), [{ id: "a", levelDbm: -50, wifiChannel: 6 }])[0].strongestDbm; // => -48
 */
export function wifiNeighbours(
  ours: Radiated,
  emission: Shape,
  accessPoints: readonly HeardAccessPoint[],
  apPowerDbm: number = ASSUMED_AP_POWER_DBM,
): WifiNeighbour[] {
  requireFinite("apPowerDbm", apPowerDbm);
  const overlapDb = overlapDbByOffset(emission, brickWall(WIFI_MHZ));
  const byChannel = new Map<number, HeardAccessPoint[]>();
  for (const point of accessPoints) {
    requireFinite(`levelDbm of ${point.id}`, point.levelDbm);
    const there = byChannel.get(point.wifiChannel);
    if (there === undefined) byChannel.set(point.wifiChannel, [point]);
    else there.push(point);
  }
  return [...byChannel]
    .sort(([a], [b]) => a - b)
    .flatMap(([wifiChannel, points]) => {
      const wifiMhz = wifiChannelCentreMhz(wifiChannel);
      if (wifiMhz === null) return [];
      const shares = ours.centresMhz.map((centreMhz) => overlapDb(wifiMhz - centreMhz));
      const inside = ours.centresMhz.filter((mhz) => Math.abs(mhz - wifiMhz) <= WIFI_MHZ / 2 + SLACK);
      const gainDb = ours.eirpDbm - apPowerDbm;
      return [{ wifiChannel, ...heardBy(points, gainDb, shares, ours), airtimeRatio: shareOf(inside, ours) }];
    });
}

const WIFI_MHZ = 20;

function shareOf(centresMhz: readonly number[], ours: Radiated): number {
  return (ours.airtimeRatio * centresMhz.length) / ours.centresMhz.length;
}

/** @param sharesDb for each of our frequencies, how much of our power falls into the Wi-Fi channel */
function heardBy(
  points: readonly HeardAccessPoint[],
  gainDb: number,
  sharesDb: readonly number[],
  ours: Radiated,
): Omit<WifiNeighbour, "wifiChannel" | "airtimeRatio"> {
  const highestDb = sharesDb.reduce((highest, share) => Math.max(highest, share), -Infinity);
  const strongest = points.reduce((best, point) =>
    point.levelDbm > best.levelDbm || (point.levelDbm === best.levelDbm && point.id < best.id) ? point : best,
  );
  const waits = (point: HeardAccessPoint, shareDb: number): boolean =>
    point.levelDbm + gainDb + shareDb >= CCA_ENERGY_DBM - SLACK;
  return {
    accessPointCount: points.length,
    strongestId: strongest.id,
    strongestDbm: strongest.levelDbm + gainDb + highestDb,
    waitingCount: points.filter((point) => waits(point, highestDb)).length,
    waitRatio: shareOf(
      ours.centresMhz.filter((_, index) => waits(strongest, sharesDb[index]!)),
      ours,
    ),
  };
}
