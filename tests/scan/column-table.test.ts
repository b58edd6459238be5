/** Tables read by the meaning of their headers and by what stands in their columns. */
import { describe, expect, test } from "vitest";
import { accounts, dialect, read } from "./dialects.js";
import type { ScanImport } from "../../src/scan/scan-import.js";

/** Address, channel, level of each reading. */
function heard({ readings }: ScanImport): unknown[] {
  return readings.map(({ bssid, channel, signalDbm }) => [bssid?.slice(-2) ?? null, channel, signalDbm]);
}

function said({ issues }: ScanImport): string {
  return issues.map(({ column, expected }) => `${column ?? ""}: ${expected}`).join("\n");
}

describe("files of foreign headers", () => {
  test("German words, title lines, a decimal comma, day before month", async () => {
    const result = await read(dialect("table-titles-german.csv"));
    expect(result).toMatchObject({ format: "scan-csv", rowCount: 4, rejectedCount: 0, outOfBandCount: 1 });
    expect(result.readings.map((row) => [row.line, row.place, row.ssid, row.airtimeRatio])).toEqual([
      [4, "Foyer", "Lantern Guest", 0.25],
      [5, "Foyer", "", null],
      [6, "Galerie", "Slipway", 0.5],
    ]);
    expect(heard(result)).toEqual([
      ["01", 1, -48.5],
      ["02", 6, -71],
      ["03", 11, -66.5],
    ]);
    expect(result.readings[2]!.timeMs).toBe(Date.UTC(2026, 2, 14, 18, 1));
    expect(result.issues).toMatchObject([{ code: "ignored", line: 1, severity: "note" }]);
  });
  test("no header at all", async () => {
    const result = await read(dialect("table-no-header.csv"));
    expect(result).toMatchObject({ rowCount: 4, rejectedCount: 0, outOfBandCount: 1 });
    expect(heard(result)).toEqual([
      ["01", 1, -48],
      ["02", 6, -71],
      ["03", 11, -66],
    ]);
    expect(result.readings.map(({ ssid }) => ssid)).toEqual(["Lantern Guest", "", "Slipway"]);
    expect(said(result)).toMatch(/column 4: taken as the level/);
  });
  test("content outranks a header: MHz over kHz", async () => {
    const result = await read(dialect("table-khz-under-mhz.csv"));
    expect(heard(result)).toEqual([
      ["01", 1, -48],
      ["03", 11, -66],
    ]);
    expect(said(result)).toContain("freq (MHz): frequencies in kHz");
  });
  // N/2 − 100: common practice, no source
  test("a quality from 0 to 100 is assumed, and said to be", async () => {
    const result = await read(dialect("table-quality.csv"));
    expect(heard(result)).toEqual([
      ["01", 1, -50],
      ["03", 11, -69],
      ["05", 6, -96],
    ]);
    expect(result.readings.every(({ signalAssumed }) => signalAssumed)).toBe(true);
    expect(said(result)).toMatch(/signal: .*quality.*assumed/);
  });
  test("channels with the side of the secondary one behind a comma", async () => {
    const result = await read(dialect("table-sided-channels.csv"));
    expect(result).toMatchObject({ rowCount: 4, rejectedCount: 0, outOfBandCount: 1 });
    expect(result.readings.map((row) => [row.channel, row.centreMhz, row.widthMhz])).toEqual([
      [1, 2422, 40],
      [6, 2437, 20],
      [11, 2452, 40],
    ]);
  });
  test("the number of a centre's channel is no frequency, a width with its range is a width", async () => {
    const result = await read(dialect("table-center-channel.csv"));
    expect(result).toMatchObject({ rowCount: 3, rejectedCount: 0, outOfBandCount: 0 });
    expect(result.readings.map((row) => [row.channel, row.centreMhz, row.widthMhz])).toEqual([
      [1, 2422, 40],
      [6, 2437, 20],
      [11, 2462, 20],
    ]);
  });
  test("levels that lost their minus", async () => {
    const result = await read(dialect("table-sign-lost.csv"));
    expect(heard(result)).toEqual([
      ["01", 1, -48],
      ["03", 11, -66],
      ["05", 6, -88],
    ]);
    expect(result.readings.every(({ signalAssumed }) => !signalAssumed)).toBe(true);
    expect(said(result)).toMatch(/without a minus.*assumed/);
  });
  test("what stands for not heard is never a level", async () => {
    const result = await read(dialect("table-not-heard.csv"));
    expect(heard(result)).toEqual([
      ["01", 1, -48],
      ["03", 11, -66],
      ["05", 6, -91],
    ]);
    expect(result).toMatchObject({ rowCount: 9, rejectedCount: 6 });
    expect(said(result)).toContain("-110 repeats, apart from all others");
    expect(said(result)).toContain("500 stands for not heard or unknown");
    expect(accounts(result)).toBe(true);
  });
  test("two fields in one pair of quotes, two rows on one line, a row cut short", async () => {
    const result = await read(dialect("table-glued.csv"));
    expect(heard(result)).toEqual([
      ["01", 1, -48],
      ["03", 6, -80],
      ["05", 6, -70],
      ["06", 11, -71],
    ]);
    expect(result).toMatchObject({ rowCount: 5, rejectedCount: 1 });
    expect(result.issues.map(({ code, line }) => [code, line])).toEqual([
      ["assumed", 3],
      ["assumed", 4],
      ["ragged-row", 5],
    ]);
  });
  test("several tables in one file, a scan CSV among them", async () => {
    const result = await read(dialect("table-two-tables.csv"));
    expect(result).toMatchObject({ rowCount: 4, rejectedCount: 0, issues: [] });
    expect(heard(result)).toEqual([
      ["01", 1, -48],
      ["03", 11, -66],
      ["05", 6, -71.5],
      ["06", 13, -80],
    ]);
    expect(result.readings.map(({ line }) => line)).toEqual([2, 3, 6, 9]);
  });
  test("addresses masked or cut are none, a colon too many does no harm", async () => {
    const result = await read(dialect("table-masked.csv"));
    expect(heard(result)).toEqual([
      [null, 1, -48],
      [null, 11, -66],
      [null, 6, -70],
      ["06", 13, -80],
    ]);
    expect(said(result)).toMatch(/address: 3 rows with a masked or cut address/);
  });
  test("a cellular row is rejected with the reason", async () => {
    const result = await read(dialect("table-cellular.csv"));
    expect(heard(result)).toEqual([
      ["01", 1, -48],
      ["03", 11, -66],
    ]);
    expect(result.issues).toMatchObject([{ line: 3, value: "LTE", expected: "a row of a Wi-Fi radio" }]);
  });
});

const ROW = "02:1a:00:00:00:01";

describe("columns", () => {
  test.each([
    ["mac,channel,rssi", `${ROW},6,-60`],
    ["Funkkanal;Signalstärke;Netz;Hardwareadresse", `6;-60;Foyer;${ROW}`],
    ["canal\tniveau du signal\tnom du réseau\tadresse", `6\t-60\tFoyer\t${ROW}`],
    ["Indirizzo;Frequenza;Livello", `${ROW};2437;-60`],
    ["dirección;frecuencia (GHz);señal", `${ROW};2.437;-60 dBm`],
    ["adres;kanaal;sterkte", `${ROW};6;-60`].map((text) => text.replace("sterkte", "signaalsterkte")) as [
      string,
      string,
    ],
    ["endereço;canal;sinal", `${ROW};6;-60`],
    ["MACアドレス,チャンネル,信号強度", `${ROW},6,-60`],
    ["access point,frequency,received power", `${ROW},2437000,-60`],
    ["bssid,freq,signal_dbm", "021a.0000.0001,2437.0,-60"],
    ["BSSID;Channel;RxLevel [dBm]", "021A00000001;6;−60"],
    ["channel,signal,quality,mac", `6,-60,77,${ROW}`],
    ["noise,snr,channel,level,mac", `-95,35,6,-60,${ROW}`],
    ["level,quality,channel,mac", `64,-60,6,${ROW}`],
    ["channel,signal level,mac", `2437,-60,${ROW}`],
    ["frequency,signal level,mac", `6,-60,${ROW}`],
    ["ssid,bssid,channel,level", `${ROW},Foyer,6,-60`],
    ["id,thing,what,other", `${ROW},Foyer,2437,-60`],
    ['"mac,channel,rssi"', `"${ROW},6,-60"`],
  ])("%s", async (header, row) => {
    const result = await read(`${header}\n${row}\n`);
    expect(heard(result)).toEqual([["01", 6, -60]]);
    expect(result.rowCount).toBe(1);
  });
  test.each([
    ["40", 2447, true],
    ["40 MHz", 2447, true],
    ["HT40-", 2427, false],
    ["HT40+", 2447, false],
    ["20 MHz", 2437, false],
    ["1", 2447, true],
  ])("width %s", async (width, centreMhz, centreAssumed) => {
    const result = await read(`mac,channel,rssi,channel width\n${ROW},6,-60,${width}\n`);
    expect(result.readings).toMatchObject([{ channel: 6, centreMhz, centreAssumed }]);
  });
  test.each([
    ["time", "2026-03-14 18:00:05"],
    ["when", "2026/03/14 18:00:05"],
    ["Zeit", "14.03.2026 18:00:05"],
    ["seen", "03/14/2026 6:00:05 PM"],
    ["timestamp", "1773511205"],
    ["timestamp (ms)", "1773511205000"],
    ["date,time", "2026-03-14,18:00:05"],
    ["date,time", "14.03.2026,6:00:05 pm"],
  ])("%s: %s", async (header, cell) => {
    const result = await read(`mac,channel,rssi,${header}\n${ROW},6,-60,${cell}\n`);
    expect(result.readings[0]?.timeMs).toBe(Date.UTC(2026, 2, 14, 18, 0, 5));
  });
  test("a date of which day and month can't be told apart is assumed, and said", async () => {
    const result = await read(`mac,channel,rssi,date\n${ROW},6,-60,04/03/2026\n`);
    expect(result.readings[0]?.timeMs).toBe(Date.UTC(2026, 2, 4));
    expect(said(result)).toMatch(/date: the day comes before the month: assumed/);
  });
  test.each([
    ["load (%)", "50", 0.5],
    ["channel utilization", "0.5", 0.5],
    ["airtime", "51", 0.51],
    ["load", "255", 1],
  ])("airtime under %s: %s", async (header, cell, ratio) => {
    const result = await read(`mac,channel,rssi,${header}\n${ROW},6,-60,${cell}\n`);
    expect(result.readings[0]?.airtimeRatio).toBeCloseTo(ratio, 12);
  });
  test.each([
    ["802.11ax", "ax"],
    ["Wi-Fi 6", "ax"],
    ["802.11b/g/n", "n"],
    ["bgn", "n"],
    ["something", "unknown"],
  ])("standard %s", async (cell, standard) => {
    const result = await read(`mac,channel,rssi,protocol\n${ROW},6,-60,${cell}\n`);
    expect(result.readings).toMatchObject([{ standard }]);
  });
  test.each(["", "--", "<hidden>", "(versteckt)", "[Hidden Network]", "\\x00\\x00", "\0\0\0"])(
    "a name %j is hidden",
    async (name) => {
      const result = await read(`mac,channel,rssi,name\n${ROW},6,-60,${name}\n02:1a:00:00:00:02,6,-60,x\n`);
      expect(result.readings.map(({ ssid }) => ssid)).toEqual(["", "x"]);
    },
  );
  test("a row of another band by its band alone", async () => {
    const result = await read(`mac,band,channel,rssi\n${ROW},2.4 GHz,6,-60\n${ROW},6 GHz,5,-60\n`);
    expect(result).toMatchObject({ rowCount: 2, outOfBandCount: 1, rejectedCount: 0 });
  });
  test("an address that goes with three names is no radio's", async () => {
    const rows = ["A", "B", "C"].map((name) => `02:00:00:00:00:00,${name},6,-60\n`).join("");
    const result = await read(`mac,name,channel,rssi\n${rows}`);
    expect(result.readings.map(({ bssid }) => bssid)).toEqual([null, null, null]);
    expect(said(result)).toContain("several names share 02:00:00:00:00:00");
  });
  test("levels at the floor of a receiver that others come close to are levels", async () => {
    const rows = [-95, -97, -98, -99, -100, -100, -100].map(
      (level, index) => `02:1a:00:00:00:0${index},6,${level}\n`,
    );
    expect((await read(`mac,channel,rssi\n${rows.join("")}`)).readings.length).toBe(7);
  });
  test("a repeated header, as joined files have it, is no row", async () => {
    for (const header of ["mac,channel,rssi", "bssid,channel,signal_dbm"]) {
      const result = await read(`${header}\n${ROW},6,-60\n${header}\n${ROW},6,-61\n`);
      expect(result).toMatchObject({ rowCount: 2, rejectedCount: 0 });
    }
  });
});

describe("the strict rules of a scan CSV stay", () => {
  test.each([
    ["a quality", "70"],
    ["a unit", "-60 dBm"],
    ["a blank sign", "--"],
  ])("%s in signal_dbm is rejected", async (_, cell) => {
    const result = await read(`bssid,channel,signal_dbm\n${ROW},6,${cell}\n`);
    expect(result).toMatchObject({ rowCount: 1, rejectedCount: 1 });
  });
  test("and −100 is a level however often it comes", async () => {
    const rows = ["01", "02", "03"].map((end) => `02:1a:00:00:00:${end},6,-100\n`).join("");
    expect((await read(`bssid,channel,signal_dbm\n${rows}`)).readings.length).toBe(3);
  });
});

describe("columns that can't be guessed", () => {
  const table = `Ding;Zahl;Wert\n${ROW};6;foo\n06:1a:00:00:00:03;11;bar\n`;
  test("end in an error that lists the headers and says what to type", async () => {
    const result = await read(`Adresse;Kanal;Netz;Wert A\n;6;Foyer;x\n`);
    expect(result.issues.map(({ code }) => code)).toEqual(["missing-column", "no-usable-row"]);
    expect(result.issues[0]!.expected).toContain('the headers are "Adresse", "Kanal", "Netz", "Wert A"');
    expect(result.issues[0]!.expected).toContain('--map signal_dbm="Wert A"');
    expect(accounts(result)).toBe(true);
  });
  test("are read as they are mapped", async () => {
    const numbers = table.replace("foo", "1,5").replace("bar", "2,5");
    const mapped = { bssid: "ding", channel: "Zahl", stations: "Wert" };
    const withLevel = numbers.replaceAll("\n", ";-60\n").replace(";-60\n", ";Q\n");
    const result = await read(withLevel, { columns: { ...mapped, signal_dbm: " q " } });
    expect(result.rowCount).toBe(2);
    expect(result.issues.slice(0, 2).map(({ column }) => column)).toEqual(["Wert", "Wert"]);
  });
  test("a map outranks the header of a scan CSV and a better guess", async () => {
    const text = `bssid,channel,signal_dbm,Second\n${ROW},6,-60,-40\n`;
    expect(heard(await read(text, { columns: { signal_dbm: "second" } }))).toEqual([["01", 6, -40]]);
  });
  test("tables without a header are mapped by the number of the column", async () => {
    const text = `${ROW},6,-60,-40\n`;
    expect(heard(await read(text, { columns: { signal_dbm: "column 4" } }))).toEqual([["01", 6, -40]]);
  });
  test("a mapped header that isn't there is said", async () => {
    const result = await read(`mac,channel,rssi\n${ROW},6,-60\n`, { columns: { ssid: "Nmae" } });
    expect(result.issues).toMatchObject([{ severity: "warning", column: "ssid", value: "Nmae" }]);
  });
  test.each([{ level: "x" }, { ssid: "" }])("a map of %o is the caller's mistake", async (columns) => {
    await expect(read("", { columns })).rejects.toThrow(/options\.columns/);
  });
});
