import fc from "fast-check";
import { expect, test } from "vitest";
import { accounts, read } from "./dialects.js";
import {
  fieldsArbitrary,
  iwScan,
  netsh,
  nmcliMultiline,
  nmcliTable,
  nmcliTerse,
  surveyArbitrary,
  wpaCli,
} from "./os-text-writers.js";
import type { Radio } from "./os-text-writers.js";

// Level = percent/2 − 100 dBm: common practice, no source. Centre = 2407 + 5·channel MHz: 802.11-2020 Annex E.

async function expectReadBack(radios: readonly Radio[], text: string): Promise<void> {
  const result = await read(text);
  expect(accounts(result)).toBe(true);
  expect(
    result.readings.map(({ bssid, ssid, channel, centreMhz, signalDbm }) => ({
      bssid,
      ssid,
      channel,
      centreMhz,
      signalDbm,
    })),
    `${text}\n${JSON.stringify(result.issues)}`,
  ).toEqual(
    radios.map(({ address, name, channel, percent }) => ({
      bssid: address,
      ssid: name,
      channel,
      centreMhz: 2407 + 5 * channel,
      signalDbm: percent / 2 - 100,
    })),
  );
}

const WORDS = [
  ["Network type", "Signal", "Radio type", "Channel", "Basic rates"],
  ["Netzwerktyp", "Signal", "Funktyp", "Kanal", "Basisraten"],
  ["ネットワークの種類", "シグナル", "無線の種類", "チャネル", "基本レート"],
  ["T\ufffdpo", "Se\ufffdal", "Tipo de r\ufffddio", "Canal", "Taxas b\ufffdsicas"],
];
const lineEnd = fc.constantFrom("\n", "\r\n");
const around = fc.constantFrom(
  ["", ""],
  ["crew@laptop:~$ nmcli -t -f SSID,BSSID\n", "crew@laptop:~$ ls\nscan.txt\n"],
);

test.each([
  ["nmcli -t", nmcliTerse],
  ["nmcli", nmcliTable],
  ["nmcli -m multiline", nmcliMultiline],
])("%s: any survey, any fields in any order", async (_, write) => {
  await fc.assert(
    fc.asyncProperty(
      surveyArbitrary,
      fieldsArbitrary,
      lineEnd,
      around,
      async (radios, fields, end, [before, after]) => {
        const text = `${before}${write(radios, fields)}${after}`;
        await expectReadBack(radios, text.replaceAll("\n", end));
      },
    ),
    { seed: 20260314, numRuns: 200 },
  );
});

test("netsh: any survey in any language", async () => {
  await fc.assert(
    fc.asyncProperty(surveyArbitrary, fc.constantFrom(...WORDS), lineEnd, async (radios, words, end) => {
      await expectReadBack(radios, netsh(radios, words).replaceAll("\n", end));
    }),
    { seed: 20260314, numRuns: 200 },
  );
});

test.each([
  ["wpa_cli", wpaCli],
  ["iw", iwScan],
])("%s: any survey", async (_, write) => {
  await fc.assert(
    fc.asyncProperty(surveyArbitrary, lineEnd, async (radios, end) => {
      await expectReadBack(radios, write(radios).replaceAll("\n", end));
    }),
    { seed: 20260314, numRuns: 200 },
  );
});
