/**
 * A text as YAML that reads back as the same text, whatever is in it: bare where it is plainly a word or
 * several, else in double quotes with what a terminal or an editor obeys as escapes.
 * @example yamlText("hall 2: \u001b[2J"); // => '"hall 2: \\u001b[2J"'
 */
export function yamlText(text: string): string {
  if (PLAIN.test(text) && !RESERVED.test(text)) return text;
  const escaped = text.replace(/["\\]/g, "\\$&").replace(OBEYED, escapeOf);
  return `"${escaped}"`;
}

const PLAIN = /^[A-Za-z](?:[A-Za-z0-9_ -]*[A-Za-z0-9])?$/;
/** Words that one version of YAML or another takes for something else. */
const RESERVED = /^(?:true|false|null|yes|no|on|off|y|n)$/i;
const OBEYED = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Cn}\p{Zl}\p{Zp}]/gu;

function escapeOf(character: string): string {
  const code = character.codePointAt(0)!;
  return code > 0xffff
    ? `\\U${code.toString(16).padStart(8, "0")}`
    : `\\u${code.toString(16).padStart(4, "0")}`;
}
