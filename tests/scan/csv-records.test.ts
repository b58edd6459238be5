import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { csvRecords } from "../../src/scan/csv-records.js";
import type { CsvFault, CsvRecord } from "../../src/scan/csv-records.js";

async function* cutEvery(text: string, sizeCount: number): AsyncGenerator<string> {
  for (let index = 0; index < text.length; index += sizeCount) yield text.slice(index, index + sizeCount);
}

async function all(text: string, sizeCount = 65_536): Promise<(CsvRecord | CsvFault)[]> {
  const records: (CsvRecord | CsvFault)[] = [];
  for await (const block of csvRecords(cutEvery(text, sizeCount), ","))
    records.push(...("fault" in block ? [block] : block));
  return records;
}

describe("lines", () => {
  test("count quoted line ends, blank lines and every kind of line end", async () => {
    const records = await all('a,b\n"1\r\n2",x\r\n\r\n"p\rq",y\r"z\n\n"\n,');
    expect(records).toEqual([
      { line: 1, cells: ["a", "b"] },
      { line: 2, cells: ["1\r\n2", "x"] },
      { line: 4, cells: [""] },
      { line: 5, cells: ["p\rq", "y"] },
      { line: 7, cells: ["z\n\n"] },
      { line: 10, cells: ["", ""] },
    ]);
  });

  test("start where grep would find each record, whatever stands before", async () => {
    const cell = fc.constantFrom("x", "", '"q\nq"', '"\r\n"', '"a,""b"""', '5" c', " y ");
    const record = fc.tuple(cell, fc.constantFrom("\n", "\r\n"));
    await fc.assert(
      fc.asyncProperty(fc.array(record, { minLength: 1 }), async (rows) => {
        const marked = rows.map(([text, end], index) => `#${index},${text}${end}`).join("");
        const lines = marked.split("\n");
        for (const [index, found] of (await all(marked)).entries())
          expect(lines[found.line - 1]).toMatch(new RegExp(`^#${index},`));
      }),
    );
  });
});

test("the cells are those of csv-parse on the whole text, in any pieces", async () => {
  const cell = fc.oneof(
    fc.string().map((text) => `"${text.replaceAll('"', '""')}"`),
    fc.string().map((text) => text.replaceAll(/[",\r\n]/g, "")),
  );
  const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 8 });
  await fc.assert(
    fc.asyncProperty(
      table,
      fc.constantFrom("\n", "\r\n", "\r"),
      fc.integer({ min: 1, max: 9 }),
      async (rows, end, size) => {
        const text = rows.map((cells) => cells.join(",")).join(end) + end;
        const expected = parse(text, { record_delimiter: end, relax_column_count: true });
        expect((await all(text, size)).map((found) => ("cells" in found ? found.cells : found))).toEqual(
          expected,
        );
      },
    ),
  );
});

describe("a quote that isn't sound costs its own line only", () => {
  test("text after the closing quote", async () => {
    expect(await all('"a"b,1\nc,2\n')).toEqual([
      { fault: "broken", line: 1, text: '"a"b,1' },
      { line: 2, cells: ["c", "2"] },
    ]);
  });
  test("never closed", async () => {
    expect(await all('c,2\r\n"a,1\r\nd,3\r\ne,4')).toEqual([
      { line: 1, cells: ["c", "2"] },
      { fault: "broken", line: 2, text: '"a,1' },
      { line: 3, cells: ["d", "3"] },
      { line: 4, cells: ["e", "4"] },
    ]);
  });
  test("never closed within the longest record", async () => {
    const rows = "d,3\n".repeat(300_000);
    const records = await all(`"a,1\n${rows}`);
    expect(records[0]).toEqual({ fault: "broken", line: 1, text: '"a,1' });
    expect(records.length).toBe(300_001);
    expect(records.at(-1)).toEqual({ line: 300_001, cells: ["d", "3"] });
  });
});

test("a record longer than 1 Mi characters ends the reading", async () => {
  const long = "x".repeat(1_048_576);
  for (const size of [65_536, 5_000_000]) {
    expect(await all(`a,b\n${long}\nc,d\n`, size)).toEqual([
      { line: 1, cells: ["a", "b"] },
      { fault: "limit", line: 2, text: "" },
    ]);
    expect((await all(`a,b\n${long.slice(1)}\nc,d\n`, size)).length).toBe(3);
  }
});
