import { decodeText } from "./decode-text.js";
import type { ChunkedInput } from "./watched-input.js";
import { sweepLayout } from "./sweep-layout.js";
import type { SweepLayout } from "./sweep-layout.js";
import { SNIFFED_COUNT, utf16Of } from "./utf-16.js";

/** As much of the start is gathered, in bytes or characters, and as much of it judged, in characters. */
const GATHERED_COUNT = 65_536;
const JUDGED_COUNT = 16_384;

/** An input whose start has been judged, and nothing of it lost. */
export interface OpenedScan {
  /** How it is written, when it is a power sweep. */
  readonly layout: SweepLayout | null;
  /** The whole input again. */
  readonly input: ChunkedInput;
  /** The whole input as bytes of UTF-8, without a byte order mark. */
  readonly bytes: () => AsyncIterable<Uint8Array>;
}

/** Looks at the start of an input: is it a power sweep? Its judgement doesn't depend on how it was cut. */
export async function openScan(input: ChunkedInput): Promise<OpenedScan> {
  const chunks = iteratorOf(input);
  if (chunks === null) return { layout: null, input, bytes: () => encoded(decodeText(input)) };
  const parts: (string | Uint8Array)[] = [];
  let gatheredCount = 0;
  let isWhole = false;
  let isKnownKind = true;
  while (!isWhole && isKnownKind && gatheredCount < GATHERED_COUNT) {
    const next = await chunks.next();
    if (next.done === true) isWhole = true;
    else {
      parts.push(next.value);
      isKnownKind = typeof next.value === "string" || next.value instanceof Uint8Array;
      gatheredCount += isKnownKind ? next.value.length : 0;
    }
  }
  const again = joined(parts, chunks, isWhole);
  if (!isKnownKind) return { layout: null, input: again, bytes: () => encoded(decodeText(again)) };
  const text = await textOf(parts);
  const head = text.slice(0, JUDGED_COUNT);
  const layout = sweepLayout(head, isWhole && head.length === text.length);
  const isPlain = parts.every((part) => part instanceof Uint8Array) && !isUtf16(parts);
  return { layout, input: again, bytes: () => (isPlain ? plainBytes(again) : encoded(decodeText(again))) };
}

function iteratorOf(input: ChunkedInput): AsyncIterator<string | Uint8Array> | null {
  if (typeof input === "string" || input instanceof Uint8Array) return iterate([input]);
  const given: unknown = input;
  if (typeof given !== "object" || given === null) return null;
  return Symbol.asyncIterator in input || Symbol.iterator in input ? iterate(input) : null;
}

async function* iterate(
  chunks: Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>,
): AsyncGenerator<string | Uint8Array, void, undefined> {
  yield* chunks;
}

async function* joined(
  parts: readonly (string | Uint8Array)[],
  rest: AsyncIterator<string | Uint8Array>,
  isWhole: boolean,
): AsyncGenerator<string | Uint8Array, void, undefined> {
  try {
    yield* parts;
    if (isWhole) return;
    for (let next = await rest.next(); next.done !== true; next = await rest.next()) yield next.value;
  } finally {
    await rest.return?.();
  }
}

async function textOf(parts: readonly (string | Uint8Array)[]): Promise<string> {
  let text = "";
  for await (const piece of decodeText(parts)) text += piece;
  return text;
}

function isUtf16(parts: readonly (string | Uint8Array)[]): boolean {
  const start: number[] = [];
  for (const part of parts) {
    if (typeof part === "string" || start.length >= SNIFFED_COUNT) break;
    start.push(...part.subarray(0, SNIFFED_COUNT - start.length));
  }
  return utf16Of(Uint8Array.from(start)) !== null;
}

const BYTE_ORDER_MARK = [0xef, 0xbb, 0xbf];

/** The bytes as they come, a byte order mark left out. */
async function* plainBytes(
  chunks: AsyncIterable<string | Uint8Array>,
): AsyncGenerator<Uint8Array, void, undefined> {
  let markedCount = 0;
  for await (const chunk of chunks) {
    const bytes = typeof chunk === "string" ? bytesOf(chunk) : chunk;
    let start = 0;
    while (markedCount < BYTE_ORDER_MARK.length && start < bytes.length) {
      if (bytes[start] !== BYTE_ORDER_MARK[markedCount]) markedCount = BYTE_ORDER_MARK.length;
      else [start, markedCount] = [start + 1, markedCount + 1];
    }
    if (start < bytes.length) yield start === 0 ? bytes : bytes.subarray(start);
  }
}

async function* encoded(pieces: AsyncIterable<string>): AsyncGenerator<Uint8Array, void, undefined> {
  for await (const piece of pieces) yield bytesOf(piece);
}

const UNKNOWN = "?".charCodeAt(0);

/** One byte a character: what isn't ASCII is no number either way. */
function bytesOf(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    bytes[index] = code < 0x80 ? code : UNKNOWN;
  }
  return bytes;
}
