/** Characters that JSON lets stand and a terminal obeys or shows out of order: DEL, C1, bidi, separators. */
const OBEYED = /[\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;

/** One JSON value as text: every string as it is, in characters that no terminal obeys. */
export function jsonText(value: object): string {
  const text = JSON.stringify(value, null, 2).replace(
    OBEYED,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
  return `${text}\n`;
}
