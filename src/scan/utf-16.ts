/** So many bytes of a file's start show whether it is UTF-16. */
export const SNIFFED_COUNT = 256;
/** Share of characters below U+0100 that text of a scan has at least, in any language. */
const LEAST_RATIO = 0.3;
/** Fewer pairs than these show nothing. */
const FEWEST_PAIRS_COUNT = 8;

/**
 * UTF-16 by its byte order mark (WHATWG Encoding, "BOM sniff"); without one by the zero bytes, which stand
 * on one side of many pairs and never on the other.
 * @param start the first {@link SNIFFED_COUNT} bytes, or all there are
 * @returns null when it isn't UTF-16
 * @example utf16Of(Uint8Array.of(0xff, 0xfe)); // => "utf-16le"
 */
export function utf16Of(start: Uint8Array): "utf-16le" | "utf-16be" | null {
  if (start[0] === 0xff && start[1] === 0xfe) return "utf-16le";
  if (start[0] === 0xfe && start[1] === 0xff) return "utf-16be";
  const zeroCounts: [even: number, odd: number] = [0, 0];
  const pairCount = Math.floor(Math.min(start.length, SNIFFED_COUNT) / 2);
  for (let index = 0; index < pairCount * 2; index++) if (start[index] === 0) zeroCounts[index & 1]!++;
  const [evenCount, oddCount] = zeroCounts;
  if (pairCount < FEWEST_PAIRS_COUNT) return null;
  const leastCount = LEAST_RATIO * pairCount;
  if (evenCount === 0 && oddCount >= leastCount) return "utf-16le";
  return oddCount === 0 && evenCount >= leastCount ? "utf-16be" : null;
}
