import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { seededRandom } from "../../src/numeric/index.js";
import { shuffled } from "../helpers/shuffled.js";
import { accounts, dialect, read } from "./dialects.js";

/** Every text fixture: whatever stands in a .txt file. */
const FILES = readdirSync(new URL("../../fixtures/scans/dialects/", import.meta.url)).filter((name) =>
  name.endsWith(".txt"),
);
const RUN_COUNT = 60;
const LONGEST_MS = 2_000;

/** Bytes turned, the end cut off, lines in another order: one of them or several. */
function damaged(bytes: Uint8Array, seed: number): Uint8Array {
  const random = seededRandom(seed);
  const below = (count: number): number => Math.floor(random() * count);
  let next = Uint8Array.from(bytes);
  if (below(2) === 0) {
    const lines = new TextDecoder("latin1").decode(next).split("\n");
    const order = below(2) === 0 ? shuffled(lines, seed) : lines.filter(() => below(8) !== 0);
    next = Uint8Array.from(order.join("\n"), (character) => character.charCodeAt(0) & 0xff);
  }
  for (let left = below(24); left > 0; left--) next[below(next.length)] = below(256);
  return below(3) === 0 ? next.subarray(0, below(next.length + 1)) : next;
}

test("there are texts of every command", () => {
  for (const word of ["iw-", "nmcli-terse", "nmcli-table", "nmcli-multiline", "netsh-", "wpa-cli"])
    expect(FILES.some((name) => name.startsWith(word))).toBe(true);
});

test.each(FILES)("%s damaged anyhow: never a crash or a hang, every row accounted for", async (name) => {
  const bytes = dialect(name);
  for (let seed = 1; seed <= RUN_COUNT; seed++) {
    const start = performance.now();
    const result = await read(damaged(bytes, seed));
    expect(performance.now() - start).toBeLessThan(LONGEST_MS);
    expect(accounts(result), `seed ${seed}`).toBe(true);
    if (result.rowCount > 0) expect(result.format).not.toBe("unknown");
    for (const { signalDbm, channel, centreMhz } of result.readings) {
      expect(signalDbm >= -130 && signalDbm <= -5).toBe(true);
      expect(channel >= 1 && channel <= 14 && centreMhz >= 2400 && centreMhz <= 2500).toBe(true);
    }
  }
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
