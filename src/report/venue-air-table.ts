import { printable } from "../issues/index.js";
import type { ReceiverLink } from "../venue/index.js";
import { sourceName } from "./channel-tables.js";
import { dBm } from "./level-words.js";
import { lossPercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { tableLines } from "./text-layout.js";
import type { VenueLinkReport } from "./venue-link-report.js";

/** Contributors that text shows; JSON has them all. */
const MOST_SOURCES = 10;

/** What is on the air at one receiver, in its channel, loudest first. */
export function venueAirTable(
  { survey, venue }: VenueLinkReport,
  { judged }: ReceiverLink,
  style: TextStyle,
): string[] {
  const { contributors } = judged;
  if (contributors.length === 0) return ["Nothing above the noise."];
  const sources = new Map(survey.emitters.map((source) => [source.emitter, source]));
  const listed = new Set(venue.emitters.map(({ name }) => name));
  const rows = contributors
    .slice(0, MOST_SOURCES)
    .map(({ emitter, inChannelDbm, airtimeRatio, airtimeAssumed, onRatio }) => {
      const source = sources.get(emitter);
      return [
        dBm(inChannelDbm),
        `${lossPercent(airtimeRatio)}${airtimeAssumed ? " assumed" : ""}`,
        lossPercent(onRatio),
        source === undefined
          ? `${listed.has(emitter) ? "venue file: " : ""}${printable(emitter, 60)}`
          : `Wi-Fi ch ${source.channel} ${sourceName(source)}`,
      ];
    });
  const lines = tableLines(
    [
      { head: "in channel", align: "right" },
      { head: "airtime", align: "left" },
      { head: "on", align: "right" },
      { head: "who", align: "left" },
    ],
    rows,
    style.columnCount,
  );
  const moreCount = contributors.length - rows.length;
  return moreCount > 0 ? [...lines, `(and ${moreCount} weaker: --json has them all)`] : lines;
}
