import { printable } from "../issues/index.js";
import type { SurveyEmitter } from "../scan/index.js";
import { sourceName } from "./channel-tables.js";
import { fixed, wholePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { clipped } from "./text-layout.js";

/** Sources told in full; `--json` has them all. */
const MOST_SOURCES = 8;

/**
 * The strongest sources, two lines each: who, the airtime that it reported by crowd and when it was heard; then the
 * spread of its level at each place, strongest place first.
 */
export function sourceDetails(strongestFirst: readonly SurveyEmitter[], style: TextStyle): string[] {
  const lines = strongestFirst
    .slice(0, MOST_SOURCES)
    .flatMap((source) => [
      clipped(`- Wi-Fi ch ${source.channel} ${sourceName(source)}`, 28).padEnd(28) +
        ` ${airtimeWords(source)}; ${whenWords(source)}`,
      `  ${placeWords(source)}`,
    ]);
  const more = strongestFirst.length - MOST_SOURCES;
  return [
    ...lines.map((line) => clipped(line, style.columnCount)),
    ...(more > 0 ? [`(and ${more} more: --json)`] : []),
  ];
}

function placeWords({ places }: SurveyEmitter): string {
  return [...places]
    .sort((a, b) => b.levelDbm - a.levelDbm)
    .map(({ place, lowestDbm, highestDbm, readingCount }) => {
      const low = fixed(lowestDbm, 0);
      const high = fixed(highestDbm, 0);
      const spread = low === high ? low : `${low} to ${high}`;
      return `${place === "" ? "place not named" : printable(place, 24)} ${spread} (${readingCount})`;
    })
    .join(", ");
}

function airtimeWords({ reportedAirtime }: SurveyEmitter): string {
  const crowds = [
    ["empty", reportedAirtime.emptyRatio],
    ["part", reportedAirtime.partRatio],
    ["full", reportedAirtime.fullRatio],
  ] as const;
  const reported = crowds.flatMap(([crowd, ratio]) =>
    ratio === null ? [] : [`${wholePercent(ratio)} ${crowd}`],
  );
  return reported.length === 0 ? "none reported" : reported.join(", ");
}

function whenWords({ firstSeen, lastSeen }: SurveyEmitter): string {
  if (firstSeen === null || lastSeen === null) return "time not said";
  const minute = (iso: string): string => `${iso.slice(5, 10)} ${iso.slice(11, 16)}`;
  return `${minute(firstSeen)} to ${minute(lastSeen)}`;
}
