import { newDecoder } from "./text-decoder.js";
import { visibleName } from "./os-text-name.js";

/** Escapes of one letter. @source wpa_supplicant's text encoding of names, from memory */
const LETTERS: Readonly<Record<string, number>> = { n: 10, r: 13, t: 9, e: 27, '"': 34, "\\": 92 };

/**
 * A network name as `wpa_cli` prints it: `\\`, `\"`, `\e`, `\n`, `\r`, `\t`, and `\xNN` for other bytes that
 * don't print, which are UTF-8 together.
 * @returns the name; empty when it is hidden
 * @example decodeWpaCliSsid('B\\xc3\\xbchne \\"A\\"'); // => 'Bühne "A"'
 */
export function decodeWpaCliSsid(printed: string): string {
  const runs = /(?:\\x[0-9a-f]{2}|\\[nrte"\\])+/gi;
  const name = printed.replace(runs, (run) => newDecoder("utf-8").decode(bytesOf(run)));
  return visibleName(name);
}

function bytesOf(run: string): Uint8Array {
  const escapes = run.match(/\\x..|\\./gi) ?? [];
  return Uint8Array.from(escapes, (escape) =>
    escape.length === 4 ? Number.parseInt(escape.slice(2), 16) : LETTERS[escape[1]!.toLowerCase()]!,
  );
}
