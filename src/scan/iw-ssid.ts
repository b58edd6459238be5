import { newDecoder } from "./text-decoder.js";

/**
 * A network name as `iw` prints it: bytes that don't print stand as `\x` and two hex digits, and are
 * UTF-8 together. A name of nothing but zero bytes is a hidden one.
 * @returns the name; empty when it is hidden
 * @source iw scan.c output format (Linux nl80211 tool), read
 * @example decodeIwSsid("Caf\\xc3\\xa9"); // => "Café"
 */
export function decodeIwSsid(printed: string): string {
  const name = printed.replace(/(?:\\x[0-9a-f]{2})+/gi, (run) => newDecoder("utf-8").decode(bytesOf(run)));
  return /^\0*$/.test(name) ? "" : name;
}

function bytesOf(run: string): Uint8Array {
  return Uint8Array.from(run.slice(2).split("\\x"), (digits) => Number.parseInt(digits, 16));
}
