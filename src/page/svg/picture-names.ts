/** Characters of one name in kebab case. */
const LONGEST_COUNT = 40;

/**
 * Names of pictures in kebab case, each once: what would come twice gets a number.
 * @example const nameOf = pictureNames(); nameOf("band", "Hall & bar"); // => "band-hall-bar"
 */
export function pictureNames(): (...words: readonly string[]) => string {
  const used = new Set<string>();
  return (...words) => {
    const base = words
      .map(kebab)
      .filter((word) => word !== "")
      .join("-");
    let name = base;
    for (let count = 2; used.has(name); count++) name = `${base}-${count}`;
    used.add(name);
    return name;
  };
}

function kebab(text: string): string {
  const plain = text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return plain
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, LONGEST_COUNT)
    .replace(/^-+|-+$/g, "");
}
