/**
 * A network's name where the text may stand for a hidden one: blank, `--`, zero bytes, or zero bytes
 * written as `\x00`.
 * @returns the name as it stands; empty when it is hidden
 * @example visibleName("\\x00\\x00"); // => ""
 */
export function visibleName(text: string): string {
  return HIDDEN.test(text) ? "" : text;
}

const HIDDEN = /^(?:[\s\0]*|--|(?:\\x00)+|(?:\\0)+)$/;
