import { describe, expect, it } from "vitest";
import type { Reading } from "../../src/scan/index.js";
import { announcedSources, louder } from "../../src/scan/survey-source.js";
import type { AnnouncedSource } from "../../src/scan/survey-source.js";
import { minute, reading } from "../helpers/readings.js";

const sourcesOf = (...readings: Partial<Reading>[]): AnnouncedSource[] =>
  announcedSources(readings.map((given) => ({ fileIndex: 0, reading: reading(given) })));
const levelsOf = ({ heard }: AnnouncedSource): number[] =>
  [...heard.values()].map(({ signalDbm }) => signalDbm).sort((a, b) => b - a);

describe("announcedSources", () => {
  it("makes one reading of several rows in one instant, the highest", () => {
    const [source] = sourcesOf({ signalDbm: -70 }, { signalDbm: -60 }, { signalDbm: -65, timeMs: minute(1) });
    expect(levelsOf(source!)).toEqual([-60, -65]);
    expect(source!.readings).toHaveLength(3);
  });

  it("tells instants apart by time and by place", () => {
    const [source] = sourcesOf({}, { place: "foyer" }, { timeMs: minute(1) });
    expect(source!.heard.size).toBe(3);
  });

  it("tells two files of one time apart, also files of one name", () => {
    const [source] = announcedSources([
      { fileIndex: 0, reading: reading() },
      { fileIndex: 1, reading: reading() },
    ]);
    expect(source!.heard.size).toBe(2);
  });

  it("gives every untimed row of an address an instant of its own", () => {
    const [source] = sourcesOf(
      { timeMs: null, signalDbm: -70 },
      { timeMs: null, signalDbm: -60 },
      { timeMs: null, signalDbm: -60 },
    );
    expect(levelsOf(source!)).toEqual([-60, -60, -70]);
  });

  it("keeps an address on two channels as two sources, and names without addresses by name and channel", () => {
    const keys = (sources: AnnouncedSource[]): string[] =>
      sources.map(({ bssid, key, channel }) => `${bssid} ${key} ${channel}`).sort();
    expect(keys(sourcesOf({ channel: 1 }, { channel: 11 }))).toEqual([
      "02:00:5e:10:00:01 02:00:5e:10:00:01 1",
      "02:00:5e:10:00:01 02:00:5e:10:00:01 11",
    ]);
    const named = sourcesOf(
      { bssid: null, ssid: "a" },
      { bssid: null, ssid: "b" },
      { bssid: null, ssid: "a", channel: 1 },
    );
    expect(keys(named)).toEqual(["null a 1", "null a 6", "null b 6"]);
  });
});

describe("louder", () => {
  it("keeps the highest level, the greatest report and the fullest crowd", () => {
    const one = { place: "hall", crowdRank: 0, signalDbm: -60, airtimeRatio: 0.2 };
    const other = { place: "hall", crowdRank: 2, signalDbm: -70, airtimeRatio: 0.4 };
    const both = { place: "hall", crowdRank: 2, signalDbm: -60, airtimeRatio: 0.4 };
    expect(louder(one, other)).toEqual(both);
    expect(louder(other, one)).toEqual(both);
    expect(louder(one, { ...one, airtimeRatio: null }).airtimeRatio).toBe(0.2);
    expect(louder({ ...one, airtimeRatio: null }, { ...one, airtimeRatio: null }).airtimeRatio).toBeNull();
  });
});
