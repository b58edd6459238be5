/** 80 columns hold for long figures, long words and every profile, not for the demo alone. */
import { describe, expect, test } from "vitest";
import { tooWide } from "../cli/columns.js";
import { CROWDED, EMPTY, firstBlock, FOYER, FULL, inProcess } from "../cli/stillband.js";

const RUNS: readonly (readonly string[])[] = [
  ["link", "--enclosure", "antenna-outside"],
  ["link", "--enclosure", "closed-metal", "--distance", "99999m", "--distances", "0.1m,99999m"],
  ["link", "--units", "ft", "--distance", "3280ft", "--fade", "rayleigh-lognormal:6.5"],
  ["link", "--path-model", "log-distance:2.25:40.25", "--reliability", "0.99999", FULL],
  ["channel", FULL, "--profile", "hop-79"],
  ["channel", FULL, "--profile", "hop-79", "--region", "JP", "--quiet"],
  ["channel", FULL, "--profile", "raster-16", "--busy-share", "0"],
  ["channel", CROWDED, "--profile", "raster-16", "--distance", "200ft"],
  ["channel", "--place", "the very long name of an upper foyer with a bar", "--crowd", "full", FOYER],
  ["channel", EMPTY, "--set", "enclosure=plastic-or-glass", "--set", "tx_power_dbm=12.5"],
  ["channel", EMPTY, "--set", "receivers_follow=yes", "--set", "relink_s=12.75"],
  ["survey", CROWDED, "--profile", "hop-79-avoid"],
  ["profiles", "raster-16"],
  ["profiles", "hop-79-avoid"],
];

describe("no line is wider than 80 columns, the opening block at most eight lines", () => {
  test.each(RUNS.map((args) => ({ args, words: args.join(" ") })))("$words", async ({ args }) => {
    const { code, out } = await inProcess(args);
    expect(code).toBe(0);
    expect(tooWide(out, 80)).toEqual([]);
    if (args[0] !== "profiles") expect(firstBlock(out).length).toBeLessThanOrEqual(8);
  });
});
