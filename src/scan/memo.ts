const MOST_TEXTS_COUNT = 4_096;
const LONGEST_TEXT_COUNT = 64;

/**
 * Remembers what a pure function made of the texts it met lately: a scan repeats the same few addresses,
 * names and figures in every row. Equal texts also become one string in memory.
 * @param parse never returns undefined
 */
export function memo<T>(parse: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const value = parse(text);
    if (text.length > LONGEST_TEXT_COUNT) return value;
    if (known.size >= MOST_TEXTS_COUNT) known.clear();
    known.set(text, value);
    return value;
  };
}
