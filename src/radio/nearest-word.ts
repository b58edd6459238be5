/**
 * The known word nearest to one that isn't known: fewest letters to insert, delete or change, at most a
 * third of the longer word, case and underscores aside.
 * @param word as typed
 * @param knownWords those that it may have meant
 * @returns null when none is near; of equally near ones the first
 * @source V. I. Levenshtein's distance
 * @example nearestWord("sensitivty_dbm", ["requiredCiDb", "sensitivityDbm"]); // => "sensitivityDbm"
 */
export function nearestWord(word: string, knownWords: readonly string[]): string | null {
  const wanted = folded(word).slice(0, LONGEST_COMPARED);
  let nearest: string | null = null;
  let nearestDistance = Infinity;
  for (const known of knownWords) {
    const distance = editDistance(wanted, folded(known));
    const allowed = Math.max(wanted.length, folded(known).length) / 3;
    if (distance <= allowed && distance < nearestDistance) [nearest, nearestDistance] = [known, distance];
  }
  return nearest;
}

const LONGEST_COMPARED = 64;

function folded(word: string): string {
  return word.toLowerCase().replaceAll(/[_\s-]/g, "");
}

function editDistance(one: string, other: string): number {
  let row = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let i = 1; i <= one.length; i++) {
    const next = [i];
    for (let j = 1; j <= other.length; j++) {
      const change = row[j - 1]! + (one[i - 1] === other[j - 1] ? 0 : 1);
      next.push(Math.min(change, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[other.length]!;
}
