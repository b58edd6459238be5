import type { SystemToday } from "../commissioning/index.js";
import { printable } from "../issues/index.js";
import { fixed } from "./number-format.js";
import { shortName } from "./rooms-words.js";
import { columnsOf } from "./text-layout.js";
import type { VerifiedChannel, VerifyReport } from "./verify-report.js";

/** Nothing fails. */
export function isPassed({ findings }: Pick<VerifyReport, "findings">): boolean {
  return findings.every(({ severity }) => severity === "warning");
}

/** Whole dB, signed. @example signedDb(-8.4); // => "-8 dB" */
export function signedDb(valueDb: number): string {
  const text = fixed(valueDb, 0);
  return `${valueDb > 0 && text !== "0" ? "+" : ""}${text} dB`;
}

/** A difference in a table. @example signedTenth(2.31); // => "+2.3" */
export function signedTenth(valueDb: number): string {
  const text = fixed(valueDb, 1);
  return valueDb > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** A system's planned channel today, in a few words. */
export function todayWords({
  channel,
  system,
  verdict,
  behindDb,
  bestChannel,
  marginDb,
}: SystemToday): string {
  const on = `${shortName(system)} radio ch ${channel}`;
  const ahead = `${fixed(behindDb ?? 0, (behindDb ?? 0) < 1 ? 1 : 0)} dB`;
  switch (verdict) {
    case "still-best":
      return `${on} still best`;
    case "as-good":
      return `${on} holds (ch ${bestChannel} +${ahead})`;
    case "beaten":
      return `x ${on} beaten by ch ${bestChannel}, ${ahead}`;
    case "fails":
      return bestChannel === channel || marginDb === null
        ? `x ${on} FAILS, and none is better`
        : `x ${on} FAILS, ch ${bestChannel} +${ahead}`;
    case "not-ranked":
      return `x ${on} is none to use now`;
  }
}

/** As many of some words as fit on a line, and how many more there are. */
export function fittingWords(words: readonly string[], columnCount: number, more: string): string {
  for (let shown = words.length; shown > 0; shown--) {
    const left = words.length - shown;
    const line = `${words.slice(0, shown).join("; ")}${left > 0 ? `; ${left} more ${more}` : ""}`;
    if (columnsOf(line) <= columnCount || shown === 1) return line;
  }
  return "";
}

/** Where a planned channel comes from. */
export const CHANNEL_FROM: Readonly<Record<VerifiedChannel["from"], string>> = {
  plan: "the plan file",
  "venue-file": "the venue file",
  "surveyed-scans": "the surveyed scans (chosen jointly here)",
};

/** A receiver's verdict in a word or two, and its mark. */
export const CHECK_WORDS = {
  "as-planned": "o as planned",
  low: "x low",
  high: "! high",
  "not-heard": "x not heard",
  "antenna-suspect": "x antenna",
  "not-read": "! not read",
} as const;

/** Text from a file, cut for a table. */
export function cellName(name: string): string {
  return printable(name, 14);
}
