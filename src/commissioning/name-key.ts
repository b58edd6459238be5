/**
 * By which names written by hand are one: capitals and the blanks around them don't count.
 * @example nameKey(" H1 "); // => "h1"
 */
export function nameKey(name: string): string {
  return name.trim().toLowerCase();
}
