import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decodeText } from "../../src/scan/decode-text.js";
import type { ChunkedInput } from "../../src/scan/watched-input.js";

async function text(input: ChunkedInput): Promise<string> {
  let all = "";
  for await (const piece of decodeText(input)) all += piece;
  return all;
}

const bytesOf = (content: string): Uint8Array => new TextEncoder().encode(content);

describe("takes", () => {
  test("text, bytes, and iterables of both", async () => {
    async function* later(): AsyncGenerator<string | Uint8Array> {
      yield "a";
      yield bytesOf("é");
      yield "b";
    }
    expect(await text("aéb")).toBe("aéb");
    expect(await text(bytesOf("aéb"))).toBe("aéb");
    expect(await text(["a", bytesOf("é"), "b"])).toBe("aéb");
    expect(await text(later())).toBe("aéb");
    expect(await text([])).toBe("");
    expect(await text([bytesOf("a"), "b"])).toBe("ab");
  });
  test("UTF-16 with a mark, and drops the mark of every encoding", async () => {
    const little = Buffer.from("\ufeffaé☃", "utf16le");
    const big = Buffer.from(little).swap16();
    for (const input of [little, big, "\ufeffaé☃", bytesOf("\ufeffaé☃")])
      expect(await text(input)).toBe("aé☃");
    expect(await text("\ufeff\ufeffx")).toBe("\ufeffx");
  });
  test("UTF-16 without a mark, by its zero bytes, in chunks of any size", async () => {
    const content = "ssid,signal_dbm\r\nKörper 寺,-60\r\n".repeat(20);
    const little = Buffer.from(content, "utf16le");
    for (const bytes of [little, Buffer.from(little).swap16()])
      for (const size of [1, 100, 10_000]) {
        const chunks = Array.from({ length: Math.ceil(bytes.length / size) }, (_, index) =>
          bytes.subarray(index * size, (index + 1) * size),
        );
        expect(await text(chunks)).toBe(content);
      }
    expect(await text(bytesOf(`a${"\0".repeat(300)}`))).toHaveLength(301);
    expect(await text(bytesOf("a\0b\0"))).toBe("a\0b\0");
  });
  test("bytes that are no UTF-8, as U+FFFD", async () => {
    expect(await text(Uint8Array.of(0x41, 0xff, 0x42, 0xc3))).toBe("A\ufffdB\ufffd");
  });
});

test("pieces are the same however the bytes are cut, as Buffer decodes them", async () => {
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: "binary" }), fc.integer({ min: 1, max: 5 }), async (content, size) => {
      const bytes = bytesOf(`.${content}`);
      const chunks = Array.from({ length: Math.ceil(bytes.length / size) }, (_, index) =>
        bytes.subarray(index * size, (index + 1) * size),
      );
      expect(await text(chunks)).toBe(Buffer.from(bytes).toString("utf8"));
    }),
  );
});

test("pieces hold 65,536 characters", async () => {
  const lengths: number[] = [];
  for await (const piece of decodeText(["x".repeat(100_000), "y".repeat(50_000)])) lengths.push(piece.length);
  expect(lengths).toEqual([65_536, 65_536, 150_000 - 2 * 65_536]);
});

test.each([42, null, undefined, {}, [1], ["a", null]])("%j throws", async (input) => {
  await expect(text(input as ChunkedInput)).rejects.toMatchObject({
    code: "E_ARGUMENT",
    argument: "input",
  });
});
