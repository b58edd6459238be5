/** The part of the WHATWG Encoding standard's TextDecoder used here; browsers and Node both have it. */
export interface Decoder {
  decode(bytes?: Uint8Array, options?: { readonly stream?: boolean }): string;
}
declare const TextDecoder: new (label: string, options?: { readonly ignoreBOM?: boolean }) => Decoder;

/**
 * @param label encoding as the WHATWG Encoding standard labels it
 * @returns a decoder that keeps a byte order mark and turns invalid bytes into U+FFFD
 * @example newDecoder("utf-8").decode(Uint8Array.of(0x41, 0xff)); // => "A\ufffd"
 */
export function newDecoder(label: "utf-8" | "utf-16le" | "utf-16be"): Decoder {
  return new TextDecoder(label, { ignoreBOM: true });
}
