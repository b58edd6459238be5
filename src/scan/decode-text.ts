import { ArgumentError } from "../issues/index.js";
import type { ChunkedInput } from "./watched-input.js";
import { newDecoder } from "./text-decoder.js";
import type { Decoder } from "./text-decoder.js";
import { SNIFFED_COUNT, utf16Of } from "./utf-16.js";

const PIECE_COUNT = 65_536;
const BYTE_ORDER_MARK = "\ufeff";

/**
 * Text of an input, in pieces of 64 Ki characters, the last one shorter: the same pieces however the
 * input was cut. UTF-8, or UTF-16 where a byte order mark or the zero bytes of its start say so; the mark
 * is not part of the text.
 * Invalid bytes become U+FFFD.
 * @throws {ArgumentError} when the input, or a chunk of it, is neither text nor bytes
 */
export async function* decodeText(input: ChunkedInput): AsyncGenerator<string, void, undefined> {
  let pending = "";
  let started = false;
  for await (const text of decodedChunks(chunksOf(input))) {
    pending += text;
    if (!started && pending !== "") {
      started = true;
      if (pending.startsWith(BYTE_ORDER_MARK)) pending = pending.slice(1);
    }
    let start = 0;
    for (; pending.length - start >= PIECE_COUNT; start += PIECE_COUNT)
      yield pending.slice(start, start + PIECE_COUNT);
    if (start > 0) pending = pending.slice(start);
  }
  if (pending !== "") yield pending;
}

function chunksOf(input: ChunkedInput | null): Iterable<unknown> | AsyncIterable<unknown> {
  if (typeof input === "string" || input instanceof Uint8Array) return [input];
  if (typeof input === "object" && input !== null)
    if (Symbol.asyncIterator in input || Symbol.iterator in input) return input;
  throw new ArgumentError("input", "a string, bytes, or an iterable of either", input);
}

async function* decodedChunks(
  chunks: Iterable<unknown> | AsyncIterable<unknown>,
): AsyncGenerator<string, void, undefined> {
  let start: Uint8Array = new Uint8Array(0);
  let decoder: Decoder | null = null;
  for await (const chunk of chunks) {
    if (typeof chunk === "string") {
      yield rest(decoder, start) + chunk;
      decoder = newDecoder("utf-8");
    } else if (!(chunk instanceof Uint8Array)) {
      throw new ArgumentError("input", "chunks of text or bytes", chunk);
    } else if (decoder !== null) {
      yield decoder.decode(chunk, { stream: true });
    } else {
      start = joined(start, chunk);
      if (start.length < SNIFFED_COUNT) continue;
      decoder = decoderFor(start);
      yield decoder.decode(start, { stream: true });
    }
  }
  yield rest(decoder, start);
}

/** What is left: the bytes too few to judge before, or the end of a character cut short. */
function rest(decoder: Decoder | null, start: Uint8Array): string {
  return decoder === null ? decoderFor(start).decode(start) : decoder.decode();
}

function decoderFor(start: Uint8Array): Decoder {
  return newDecoder(utf16Of(start) ?? "utf-8");
}

function joined(left: Uint8Array, right: Uint8Array): Uint8Array {
  const both = new Uint8Array(left.length + right.length);
  both.set(left);
  both.set(right, left.length);
  return both;
}
