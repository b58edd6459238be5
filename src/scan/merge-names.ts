import { median } from "d3-array";
import { SLACK } from "../units/index.js";
import type { AnnouncedSource } from "./survey-source.js";

/** Two addresses of one radio are heard at nearly one level: the median difference is at most this, dB. */
const SAME_RADIO_DB = 6;

/**
 * Sources gathered into radios. Access points announce several addresses: two on one channel are one radio
 * when they differ (a) at most in the locally-administered bit of the first octet and the low four bits of
 * the last, or (b) only in the low four bits of the first octet, and when the median, over the instants at
 * which both were heard (at least one), of the difference of level is at most 6 dB. Closed transitively.
 * @returns each radio's sources; every source stands in exactly one
 */
export function mergeNames(sources: readonly AnnouncedSource[]): AnnouncedSource[][] {
  const parent = sources.map((_, index) => index);
  const root = (index: number): number => {
    while (parent[index] !== index) index = parent[index] = parent[parent[index]!]!;
    return index;
  };
  for (const candidates of candidateLists(sources))
    for (const [at, first] of candidates.entries())
      for (const second of candidates.slice(at + 1))
        if (root(first) !== root(second) && heardAlike(sources[first]!, sources[second]!))
          parent[root(first)] = root(second);
  const radios = new Map<number, AnnouncedSource[]>();
  for (const [index, source] of sources.entries()) {
    const radio = radios.get(root(index)) ?? [];
    if (radio.length === 0) radios.set(root(index), radio);
    radio.push(source);
  }
  return [...radios.values()];
}

/** Indices of sources whose addresses are alike by rule (a), and by rule (b). */
function candidateLists(sources: readonly AnnouncedSource[]): Iterable<readonly number[]> {
  const lists = new Map<string, number[]>();
  for (const [index, { bssid, channel }] of sources.entries()) {
    if (bssid === null) continue;
    const firstOctet = parseInt(bssid.slice(0, 2), 16);
    const ruleA = `a ${channel} ${firstOctet & ~0x02} ${bssid.slice(2, -1)}`;
    const ruleB = `b ${channel} ${bssid.slice(0, 1)} ${bssid.slice(2)}`;
    for (const key of [ruleA, ruleB]) {
      const list = lists.get(key);
      if (list === undefined) lists.set(key, [index]);
      else list.push(index);
    }
  }
  return lists.values();
}

function heardAlike(a: AnnouncedSource, b: AnnouncedSource): boolean {
  const differencesDb: number[] = [];
  for (const [instant, heard] of a.heard) {
    const other = b.heard.get(instant);
    if (other !== undefined) differencesDb.push(Math.abs(heard.signalDbm - other.signalDbm));
  }
  return (median(differencesDb) ?? Infinity) <= SAME_RADIO_DB + SLACK;
}
