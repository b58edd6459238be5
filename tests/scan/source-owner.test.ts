import { describe, expect, it } from "vitest";
import { ASSUMED_AIRTIME, buildSurvey, sourceOwner } from "../../src/scan/index.js";
import type { BuildSurveyOptions, Survey } from "../../src/scan/index.js";
import { readScan } from "../../src/scan/index.js";

const source = (levelDbm: number) => ({
  names: ["Quillmere Guest", "Quillmere Staff"],
  bssids: ["02:5e:1c:40:11:30"],
  levelDbm,
});
const marks = (building: string[], neighbour: string[] = []) => ({ building, neighbour });

describe("sourceOwner", () => {
  // −75 dBm and more is the building's, presumably: the project's own contract.
  it.each([
    [-40, "building"],
    [-75, "building"],
    [-75.01, "neighbour"],
  ])("presumes by level: %s dBm is the %s's", (levelDbm, owner) => {
    expect(sourceOwner(source(levelDbm), marks([]), -75)).toEqual({ owner, ownerMarked: false });
  });
  it.each(["Quillmere Staff", "02:5e:1c:40:11:30", "02-5E-1C-40-11-30"])("a mark wins: %s", (mark) => {
    expect(sourceOwner(source(-90), marks([mark]), -75)).toEqual({ owner: "building", ownerMarked: true });
    expect(sourceOwner(source(-40), marks([], [mark]), -75)).toEqual({
      owner: "neighbour",
      ownerMarked: true,
    });
  });
  it("an address wins over a name; two marks of one kind cancel out", () => {
    const byAddress = marks(["Quillmere Guest"], ["02:5e:1c:40:11:30"]);
    expect(sourceOwner(source(-40), byAddress, -75).owner).toBe("neighbour");
    const both = marks(["Quillmere Guest"], ["Quillmere Staff"]);
    expect(sourceOwner(source(-40), both, -75)).toEqual({ owner: "building", ownerMarked: false });
  });
});

describe("buildSurvey with marks", () => {
  const csv =
    "crowd,bssid,ssid,channel,signal_dbm\n" +
    "full,02:00:00:00:00:01,hall,1,-50\nfull,06:00:00:00:00:02,upstairs,6,-50\nfull,0a:00:00:00:00:03,cellar,11,-85\n";
  const survey = async (options: BuildSurveyOptions): Promise<Survey> =>
    buildSurvey([await readScan(csv, { source: "hall.csv" })], options);

  it("loads the building's own with the crowd, whatever their level, and no one else's", async () => {
    const { emitters, issues } = await survey({ building: ["cellar"], neighbour: ["upstairs"] });
    expect(emitters.map(({ owner, ownerMarked }) => [owner, ownerMarked])).toEqual([
      ["building", false],
      ["neighbour", true],
      ["building", true],
    ]);
    const { fullRatio, emptyRatio } = ASSUMED_AIRTIME;
    expect(emitters.map(({ airtimeRatio }) => airtimeRatio)).toEqual([fullRatio, emptyRatio, fullRatio]);
    expect(issues).toEqual([]);
  });
  it("says which mark names nothing, and which source is marked as both", async () => {
    const { issues } = await survey({ building: ["attic", "hall"], neighbour: ["hall"] });
    expect(issues.map(({ code, source: option, value }) => [code, option, value])).toEqual([
      ["ignored", "building-wifi", "attic"],
      ["contradiction", "building-wifi", "02:00:00:00:00:01"],
    ]);
  });
});
