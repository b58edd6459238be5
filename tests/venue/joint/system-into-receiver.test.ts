import { describe, expect, it } from "vitest";
import { systemIntoReceiverDbm } from "../../../src/venue/joint/system-into-receiver.js";
import { venueSite } from "../../../src/venue/index.js";
import type { TransmitterPlace, Venue, VenueReceiver } from "../../../src/venue/index.js";
import { dipole, receiver, rectangle, room, system, transmitter, venue, wall } from "../../helpers/venues.js";

const booth = transmitter({ x: 0, y: 0, z: 3 });
const ear = receiver("ear", { x: 10, y: 0, z: 3 });
const into = (
  from: TransmitterPlace = booth,
  box: VenueReceiver = ear,
  built: Partial<Venue> = {},
  other = system({ name: "B" }),
): number =>
  systemIntoReceiverDbm(venueSite(venue(built)), { system: other, transmitter: from }, system(), box, 2437);

/** ITU-R P.1238, N = 22, the same floor. */
const pathDb = (distanceM: number): number => 20 * Math.log10(2437) + 22 * Math.log10(distanceM) - 28;

describe("what one system puts into another's receiver", () => {
  it("is the budget of that path: 18 dBm, 2 dBi at each end, 10 dB of canopy", () => {
    expect(into()).toBeCloseTo(18 + 2 + 2 - 10 - pathDb(10), 9);
    expect(into(booth, { ...ear, enclosure: "antenna-outside" })).toBeCloseTo(18 + 4 - pathDb(10), 9);
  });
  it("takes power and feeder from the one, gain and canopy from the other", () => {
    const { profile } = system();
    const loud = { ...profile.txPowerDbm, value: 27 };
    const fed = { ...profile.txFeederLossDb, value: 3 };
    const deaf = { ...profile.rxGainDbi, value: -40 };
    const other = system({
      name: "B",
      profile: { ...profile, txPowerDbm: loud, txFeederLossDb: fed, rxGainDbi: deaf },
    });
    expect(into(booth, ear, {}, other)).toBeCloseTo(into() + 9 - 3, 9);
  });
  it("loses what walls and the audience take", () => {
    const walls = [wall({ x: 5, y: -5 }, { x: 5, y: 5 }, { lossDb: 7 })];
    expect(into(booth, ear, { walls })).toBeCloseTo(into() - 7, 9);
    const low = receiver("low", { x: 10, y: 0, z: 1 });
    const rooms = [
      room("hall", rectangle(0, -5, 20, 5), {
        people: { empty: 0, part: 0, full: 90 },
        seating: rectangle(2, -4, 9, 4),
      }),
    ];
    const near = transmitter({ x: 0, y: 0, z: 1 });
    expect(into(near, low, { rooms })).toBeCloseTo(into(near, low) - 6, 9);
  });
  it("is never more than 20 dB down by the antennas: echoes fill a null", () => {
    const mast = { ...booth, antenna: dipole() };
    const above = receiver("above", { x: 0, y: 0, z: 9 });
    // A half-wave dipole's peak is 2.15 dBi (Balanis); straight above it is its null.
    expect(into(mast, above)).toBeCloseTo(18 + 2.15 + 2 - 20 - 10 - pathDb(6), 2);
    expect(into(mast)).toBeCloseTo(18 + 2.15 + 2 - 10 - pathDb(10), 2);
  });
  it("is a number where both are at one place", () => {
    const here = receiver("here", booth.at);
    expect(into(booth, here)).toBeCloseTo(18 + 4 - 10 - pathDb(0.1), 9);
  });
});
