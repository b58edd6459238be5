import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { accounts, dialect, read } from "./dialects.js";

/** Every text fixture: whatever stands in a .txt file. */
const FILES = readdirSync(new URL("../../fixtures/scans/dialects/", import.meta.url)).filter((name) =>
  name.endsWith(".txt"),
);

test("there are texts of every command", () => {
  for (const word of ["iw-", "nmcli-terse", "nmcli-table", "nmcli-multiline", "netsh-", "wpa-cli"])
    expect(FILES.some((name) => name.startsWith(word))).toBe(true);
});

test.each(FILES)("%s reads the same in chunks of any size", async (name) => {
  const bytes = dialect(name);
  const whole = await read(bytes);
  for (const size of [1, 7, 255]) {
    const count = Math.ceil(bytes.length / size);
    const chunks = Array.from({ length: count }, (_, index) =>
      bytes.subarray(index * size, (index + 1) * size),
    );
    expect(await read(chunks)).toEqual(whole);
  }
});

test.each([
  ["nmcli-terse.txt", "\\:".repeat(400_000)],
  ["nmcli-terse.txt", "1:".repeat(400_000)],
  ["nmcli-terse.txt", "02:".repeat(300_000)],
  ["nmcli-table.txt", "a  ".repeat(300_000)],
  ["nmcli-table.txt", `1${" ".repeat(900_000)}1  x`],
  ["nmcli-multiline.txt", `${"a".repeat(900_000)}:`],
  ["netsh-english.txt", ` ${"1".repeat(900_000)}: 02`],
  ["netsh-english.txt", `${" ".repeat(900_000)}: %`],
  ["wpa-cli.txt", "\\x41".repeat(200_000)],
  ["wpa-cli.txt", `02:1a:00:00:00:01 ${" ".repeat(900_000)}x`],
])("%s with a long line within takes no longer than its length", async (name, long) => {
  const start = performance.now();
  const text = new TextDecoder().decode(dialect(name));
  expect(accounts(await read(`${text}${long}\n`))).toBe(true);
  expect(accounts(await read(`${long}\n${text}`))).toBe(true);
  expect(performance.now() - start).toBeLessThan(5_000);
});
