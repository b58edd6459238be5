import type { Reading } from "./reading.js";

/** An address that goes with as many names is not one radio's. */
const LEAST_NAMES_COUNT = 3;

/**
 * Addresses that stand for several radios: a list that hides addresses gives many sources the same one.
 * @returns addresses that go with three names or more
 */
export function sharedAddresses(readings: readonly Reading[]): ReadonlySet<string> {
  const names = new Map<string, Set<string>>();
  for (const { bssid, ssid } of readings) {
    if (bssid === null || ssid === "") continue;
    const known = names.get(bssid);
    if (known === undefined) names.set(bssid, new Set([ssid]));
    else known.add(ssid);
  }
  return new Set([...names].filter(([, known]) => known.size >= LEAST_NAMES_COUNT).map(([bssid]) => bssid));
}
