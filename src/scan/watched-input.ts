import { tellProgress } from "../issues/index.js";
import type { LongWork } from "../issues/index.js";
import type { ByteStream, ScanInput } from "./scan-import.js";

/** A text or bytes that come whole are looked at in pieces of this, so that reading them can be ended. */
const PIECE_COUNT = 262_144;

/** What the readers are given: no Web stream any more. */
export type ChunkedInput = Exclude<ScanInput, ByteStream>;
type Chunk = string | Uint8Array;

/** A Web stream as chunks; and where somebody watches, each chunk told before it is read. */
export function watchedInput(input: ScanInput, work: LongWork): ChunkedInput {
  const chunks = isByteStream(input) ? readChunks(input) : input;
  if (work.signal === undefined && work.onProgress === undefined) return chunks;
  if (typeof chunks === "string" || chunks instanceof Uint8Array)
    return watched(pieces(chunks), chunks.length, work);
  const given: unknown = chunks;
  const isIterable =
    typeof given === "object" &&
    given !== null &&
    (Symbol.asyncIterator in given || Symbol.iterator in given);
  return isIterable ? watched(chunks, null, work) : chunks;
}

/** Not every browser's streams can be iterated over. */
function isByteStream(input: ScanInput): input is ByteStream {
  if (typeof input !== "object" || (input as unknown) === null) return false;
  return !(Symbol.asyncIterator in input) && "getReader" in input && typeof input.getReader === "function";
}

async function* readChunks(stream: ByteStream): AsyncGenerator<Chunk, void, undefined> {
  const reader = stream.getReader();
  let isOver = false;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      isOver = done;
      if (done) return;
      if (value !== undefined) yield value;
    }
  } catch (error) {
    isOver = true;
    throw error;
  } finally {
    if (!isOver) await reader.cancel();
  }
}

function* pieces(whole: Chunk): Generator<Chunk, void, undefined> {
  for (let start = 0; start < whole.length; start += PIECE_COUNT)
    yield typeof whole === "string"
      ? whole.slice(start, start + PIECE_COUNT)
      : whole.subarray(start, start + PIECE_COUNT);
}

async function* watched(
  chunks: Iterable<Chunk> | AsyncIterable<Chunk>,
  totalCount: number | null,
  work: LongWork,
): AsyncGenerator<Chunk, void, undefined> {
  let doneCount = 0;
  tellProgress(work, "reading", doneCount, totalCount);
  for await (const chunk of chunks) {
    yield chunk;
    doneCount += chunk.length;
    tellProgress(work, "reading", doneCount, totalCount);
  }
}
