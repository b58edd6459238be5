import { expect, test } from "vitest";
import { parseIwSignal } from "../../src/scan/iw-signal.js";

/** What iw's `printf("%d.%.2d", s / 100, s % 100)` prints: C divides towards zero, %.2d counts digits without the sign. */
function printed(mbm: number): string {
  const [whole, rest] = [Math.trunc(mbm / 100) + 0, mbm % 100];
  return `${whole === 0 ? 0 : whole}.${rest < 0 ? "-" : ""}${String(Math.abs(rest)).padStart(2, "0")} dBm`;
}

// Source: iw scan.c output format (Linux nl80211 tool), read.
test("every signal that iw can print comes back", () => {
  expect(printed(-6050)).toBe("-60.-50 dBm");
  expect(printed(-50)).toBe("0.-50 dBm");
  for (let mbm = -13_000; mbm <= -500; mbm++)
    expect(parseIwSignal(printed(mbm))).toEqual({
      signalDbm: expect.closeTo(mbm / 100, 9) as number,
      signalAssumed: false,
    });
  for (let mbm = -499; mbm <= 3000; mbm += 7) expect(parseIwSignal(printed(mbm))).toBeNull();
});

// N/2 − 100 dBm: common practice, no source.
test("a share of 100 becomes a level that is assumed", () => {
  expect(parseIwSignal("56/100")).toEqual({ signalDbm: -72, signalAssumed: true });
  expect(parseIwSignal("0/100")).toEqual({ signalDbm: -100, signalAssumed: true });
  expect(parseIwSignal("100/100")).toEqual({ signalDbm: -50, signalAssumed: true });
});

test.each([
  "101/100",
  "-5/100",
  "5/255",
  "-60.00",
  "-60 dB",
  "--60.00 dBm",
  "",
  "NaN dBm",
  "-131.00 dBm",
  "-60.-5",
])("%j is no signal", (text) => expect(parseIwSignal(text)).toBeNull());
