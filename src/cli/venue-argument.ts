import type { ScanArgument } from "./scan-arguments.js";

/**
 * The venue file of a command that takes one.
 * @param venue `always`: every operand is one; `maybe`: a single operand is, where it is named like one
 * @returns undefined where the operands are scans
 */
export function venueArgument(
  venue: "always" | "maybe" | undefined,
  words: readonly string[],
): ScanArgument[] | undefined {
  if (venue === "always" || (venue === "maybe" && words.length === 1 && isVenueName(words[0]!)))
    return words.map((path) => ({ path }));
  return undefined;
}

/** No scan is read from a file of that kind. */
export function isVenueName(path: string): boolean {
  return /\.(?:ya?ml|json)$/i.test(path);
}
