/** A crew's table of luminaires: headers by meaning, units, every mistake with its line and column. */
import { describe, expect, test } from "vitest";
import { readLuminaires } from "../../../src/venue/index.js";
import type { LuminairesImport } from "../../../src/venue/index.js";
import { luminaireColumn } from "../../../src/venue/file/luminaire-columns.js";
import { plainTable } from "../../../src/scan/index.js";

const read = (text: string, units: "m" | "ft" = "m"): LuminairesImport => {
  const { rows, delimiter } = plainTable(text);
  return readLuminaires(rows, { source: "luminaires.csv", units, decimalComma: delimiter !== "," });
};

describe("a header is read by its meaning", () => {
  test.each([
    ["Fixture", "name", null],
    ["luminaire_name", "name", null],
    ["Room", "room", null],
    ["X (m)", "x", "m"],
    ["y_ft", "y", "ft"],
    ["Ceiling height", "ceiling_height", null],
    ["ceilingHeight [cm]", "ceiling_height", "cm"],
    ["Trim ft", "trim_height", "ft"],
    ["DMX footprint", "footprint", null],
    ["Watts", "watts", null],
    ["Power (W)", "watts", null],
    ["Weight lbs", "weight", "lb"],
    ["Gewicht (kg)", "weight", "kg"],
    ["Deckenhöhe", "ceiling_height", null],
    ["Start address", "address", null],
    ["on_link_loss", "on_link_loss", null],
    ["EMERGENCY", "emergency", null],
  ])("%s", (header, key, unit) => {
    expect(luminaireColumn(header)).toEqual({ key, unit });
  });
  test.each(["Notes", "", "Colour", "chain", "width"])("%s is the crew's own", (header) => {
    expect(luminaireColumn(header)).toBeNull();
  });
});

describe("cells", () => {
  test("any delimiter, decimal commas, blanks, quoted line ends, the crew's own columns", () => {
    const { luminaires, issues, rowCount } = read(
      'Name;Room;X;Y;Ceiling height;Trim;Watts;Emergency;Notes\n\nP1;hall;4,5;2;6;;120 W;N;"two\nlines"\nP2;hall;1;2;-;3,25;;?;\n',
    );
    expect(issues).toEqual([]);
    expect(rowCount).toBe(2);
    expect(luminaires[0]).toMatchObject({
      name: "P1",
      x: 4.5,
      ceilingHeightM: 6,
      trimHeightM: null,
      watts: 120,
    });
    expect(luminaires[0]).toMatchObject({
      emergency: "no",
      onLinkLoss: "unknown",
      further: { Notes: "two\nlines" },
    });
    expect(luminaires[1]).toMatchObject({
      ceilingHeightM: null,
      trimHeightM: 3.25,
      emergency: "unknown",
      further: {},
    });
  });
  // 1 ft = 0.3048 m, 1 lb = 0.45359237 kg, both exact by definition (1959).
  test.each([
    ["m", "10", 10],
    ["ft", "10", 3.048],
    ["m", "10 ft", 3.048],
    ["m", "10'6\"", 3.2004],
    ["ft", "10 ft 6 in", 3.2004],
    ["ft", "2.5 m", 2.5],
    ["m", "250 cm", 2.5],
    ["m", "2500mm", 2.5],
    ["ft", "30 in", 0.762],
  ] as const)("in a file in %s, a length of %s is %f m", (units, cell, metres) => {
    const { luminaires, issues } = read(
      `name\troom\tx\ty\ttrim\nA\thall\t1\t1\t"${cell.replaceAll('"', '""')}"\n`,
      units,
    );
    expect(issues).toEqual([]);
    expect(luminaires[0]!.trimHeightM).toBeCloseTo(metres, 9);
  });
  test("a weight without a unit is kg in metres, lb in feet, and feet say so", () => {
    const text = "name,room,x,y,weight\nA,hall,1,1,20\nB,hall,2,1,20 kg\n";
    expect(read(text).luminaires.map(({ weightKg }) => weightKg)).toEqual([20, 20]);
    const feet = read(text, "ft");
    expect(feet.luminaires[0]!.weightKg).toBeCloseTo(9.0718474, 9);
    expect(feet.luminaires[1]!.weightKg).toBe(20);
    expect(feet.issues).toMatchObject([{ code: "assumed", severity: "warning", line: 1, column: "weight" }]);
  });
});

describe("a mistake names its line, column, value and what was expected", () => {
  test.each([
    ["x", "four", /a number from -2000 to 2000 m/],
    ["trim height", "-1", /above 0/],
    ["footprint", "0", /whole number from 1 to 512/],
    ["address", "513", /1 to 512/],
    ["watts", "lots", /power that it draws, W/],
    ["weight", "heavy", /weight, kg/],
    ["emergency", "perhaps", /yes, no or unknown/],
    ["on link loss", "freeze", /hold, dark/],
  ])("%s", (header, value, told) => {
    const columns = ["name", "room", "x", "y", "trim height", "footprint", "address", "watts", "weight", "emergency", "on link loss"]; // prettier-ignore
    const cells = columns.map((column) => (column === header ? value : { name: "A", room: "hall", x: "1", y: "1" }[column] ?? "")); // prettier-ignore
    const good = "B,hall,2,2,3,,,,,,";
    const { luminaires, issues, rowCount, rejectedCount } = read(
      `${columns.join()}\n"C\nc",hall,3,3,3,,,,,,\n${cells.join()}\n${good}\n`,
    );
    // The quoted name spans lines 2 and 3: a line break in a name is a mistake of its own.
    expect(issues.map(({ line }) => line)).toEqual([2, 4]);
    expect(issues[1]).toMatchObject({ column: header, value, severity: "error", action: "row skipped", source: "luminaires.csv" }); // prettier-ignore
    expect(issues[1]!.expected).toMatch(told);
    expect([rowCount, rejectedCount, luminaires.length]).toEqual([3, 2, 1]);
  });
  test("every faulty cell of a row is told; the row counts once", () => {
    const { issues, rejectedCount } = read("name,room,x,y\n,hall,a,b\n");
    expect(issues.map(({ column }) => column)).toEqual(["name", "x", "y"]);
    expect(rejectedCount).toBe(1);
  });
  test("a column that is missing, with the nearest", () => {
    const { issues, rowCount, rejectedCount } = read("name,rom,x,y\nA,hall,1,1\n");
    expect(issues).toMatchObject([{ code: "missing-column", line: 1, column: "room" }]);
    expect(issues[0]!.expected).toMatch(/did you mean rom\?/);
    expect([rowCount, rejectedCount]).toEqual([1, 1]);
  });
  test("two columns of one meaning", () => {
    expect(read("name,room,x,y,trim,trim height (ft)\n").issues[0]!.expected).toMatch(/one column for trim_height; trim is it too/);
  }); // prettier-ignore
  test("a row longer than the header", () => {
    expect(read("name,room,x,y\nA,hall,1,1,more\n").issues).toMatchObject([{ code: "ragged-row", line: 2 }]);
  });
  test.each(["", "\n\n", "name,room,x,y\n"])("no row at all in %j", (text) => {
    expect(read(text).issues).toMatchObject([{ code: "no-usable-row", severity: "error" }]);
  });
});

test("rows in = used + rejected, whatever the rows are", () => {
  const cells = ["A", "hall", "1", "x", "", "9e9", '"', "\u001b[2J", "=1+1", "-"];
  let seed = 7;
  const draw = (): string => cells[(seed = (seed * 48_271) % 2_147_483_647) % cells.length]!;
  for (let run = 0; run < 50; run++) {
    const rows = Array.from({ length: 20 }, (_, index) => ({
      line: index + 2,
      cells: [draw(), draw(), draw(), draw(), draw()],
    }));
    const table = [{ line: 1, cells: ["name", "room", "x", "y", "trim"] }, ...rows];
    const { luminaires, rowCount, rejectedCount, issues } = readLuminaires(table, {
      source: "t",
      units: "m",
    });
    const filled = rows.filter((row) => row.cells.some((cell) => cell !== ""));
    expect(luminaires.length + rejectedCount).toBe(rowCount);
    expect(rowCount).toBe(filled.length);
    expect(new Set(issues.map(({ line }) => line)).size).toBe(rejectedCount);
  }
});
