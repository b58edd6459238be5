import { describe, expect, it } from "vitest";
import { findProfile } from "../../src/radio/index.js";
import { holdToRegion } from "../../src/venue/index.js";
import { system, transmitter, venue } from "../helpers/venues.js";

const profile = findProfile("raster-13");
const panel = { kind: "panel", gainDbi: 8, azimuthBeamwidthDeg: 70, elevationBeamwidthDeg: 60 } as const;
const at = { x: 2, y: 2, z: 3 };

// EN 300 328 cl. 4.3.2.3.3: 10 dBm/MHz, so 10 dBm EIRP for a fixed channel 1 MHz wide.
const EU_EIRP_DBM = 10;
const powerDbm = (of: ReturnType<typeof system>): number =>
  holdToRegion(venue({ systems: [of] }), "EU").venue.systems[0]!.profile.txPowerDbm.value;

describe("a venue under a region's rule", () => {
  it("turns a built-in radio down to 10 dBm EIRP in the EU by the antenna that it has", () => {
    expect(powerDbm(system({ transmitter: transmitter(at) }))).toBeCloseTo(EU_EIRP_DBM - 2, 9);
    // Half-wave dipole: 2.15 dBi (1.6409 as a ratio, by its exact pattern).
    expect(powerDbm(system({ transmitter: transmitter(at, { antenna: { kind: "dipole" } }) }))).toBeCloseTo(
      EU_EIRP_DBM - 10 * Math.log10(1.6409),
      3,
    );
    expect(powerDbm(system({ transmitter: transmitter(at, { antenna: panel }) }))).toBeCloseTo(
      EU_EIRP_DBM - 8,
      9,
    );
  });
  it("counts the greatest gain among the transmitter's and the candidates' antennas", () => {
    const candidates = [transmitter(at), transmitter(at, { antenna: panel })];
    expect(powerDbm(system({ transmitter: transmitter(at), candidates }))).toBeCloseTo(EU_EIRP_DBM - 8, 9);
  });
  it("leaves the profile's own gain as it was, and says what was turned down, system by system", () => {
    const systems = [
      system({ name: "stage", transmitter: transmitter(at, { antenna: panel }) }),
      system({ name: "stair", transmitter: transmitter(at) }),
    ];
    const held = holdToRegion(venue({ systems }), "EU");
    expect(held.venue.systems.map((one) => one.profile.txGainDbi)).toEqual([
      profile.txGainDbi,
      profile.txGainDbi,
    ]);
    expect(held.venue.region).toBe("EU");
    expect(held.issues.map(({ source, severity }) => [source, severity])).toEqual([
      ["stage: raster-13", "note"],
      ["stair: raster-13", "note"],
    ]);
    expect([...held.reviews.keys()]).toEqual(["stage", "stair"]);
    expect(held.reviews.get("stage")!.judgement.eirpDbm).toBeCloseTo(EU_EIRP_DBM, 9);
  });
  it("never changes a power that the user typed: the breach is an error with the dB to turn down", () => {
    const typed = { ...profile, txPowerDbm: { ...profile.txPowerDbm, value: 15, status: "yours" as const } };
    const held = holdToRegion(
      venue({ systems: [system({ profile: typed, transmitter: transmitter(at) })] }),
      "EU",
    );
    expect(held.venue.systems[0]!.profile.txPowerDbm.value).toBe(15);
    expect(held.issues.map(({ severity }) => severity)).toEqual(["error"]);
    expect(held.reviews.get("A")!.judgement.turnDownDb).toBeCloseTo(15 + 2 - EU_EIRP_DBM, 9);
  });
  it("judges nothing where no region is named, and the venue's own where it names one", () => {
    const bare = venue({ systems: [system()] });
    expect(holdToRegion(bare)).toEqual({ venue: bare, issues: [], reviews: new Map() });
    expect([...holdToRegion({ ...bare, region: "US" }).reviews.keys()]).toEqual(["A"]);
  });
});
