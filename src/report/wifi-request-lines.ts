import { printable } from "../issues/index.js";
import type { Survey, SurveyEmitter } from "../scan/index.js";
import type { WifiFix, WifiPlan } from "../venue/index.js";
import { sourceName } from "./channel-tables.js";
import type { ChannelReport } from "./channel-report.js";
import { dB, fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { radiatedWords } from "./radiated-words.js";
import { bullets } from "./section.js";
import { tableLines } from "./text-layout.js";

/** What to ask of the building's network staff, ready to be handed over. */
export function wifiRequestLines(report: ChannelReport, wifi: WifiPlan, style: TextStyle): string[] {
  const { request, radiated } = wifi;
  if (request === null || radiated === null) return ["Nothing to ask: there is no radio channel."];
  const { fixes, marginIfGrantedDb } = request;
  const table = fixes.length === 0 ? [] : fixTable(fixes, report.survey, style);
  const ours = report.plan.hopSet === null ? "our margin" : "the hop set's median margin";
  const others = fixes.length < wifi.moves.movingIds.length ? ", with all others on their worst," : "";
  const these = fixes.length === 1 ? "this radio" : `these ${fixes.length} radios`;
  return [
    ...table,
    ...bullets(
      [
        marginIfGrantedDb === null
          ? "Nothing to fix for our sake: no signal of ours arrives at the reference receiver."
          : fixes.length === 0
            ? "No radio need be fixed: wherever the building's go, our channel keeps its margin to 1 dB."
            : `Fix ${these} so: 20 MHz wide, automatic channel and automatic power off, from set-up to the end of the event. Then${others} ${ours} is ${dB(marginIfGrantedDb)}.`,
        "2.4 GHz off in and beside the room where guests can use 5 or 6 GHz.",
        `In return, so that you can judge it: we radiate ${radiatedWords(radiated)}, during set-up and the event only.`,
      ],
      style,
    ),
  ];
}

/** Rows of radios that text shows; JSON has them all. */
const MOST_FIXES = 12;

function fixTable(fixes: readonly WifiFix[], survey: Survey, style: TextStyle): string[] {
  const sources = new Map(survey.emitters.map((source) => [source.emitter, source]));
  const alone = fixes.some(({ marginIfMovedDb }) => marginIfMovedDb !== null);
  const rows = fixes
    .slice(0, MOST_FIXES)
    .map(({ emitter, wifiChannel, scannedWifiChannel, marginIfMovedDb }) => {
      const source = sources.get(emitter);
      return [
        wifiChannel === scannedWifiChannel
          ? `${wifiChannel} as now`
          : `${wifiChannel} from ${scannedWifiChannel}`,
        source === undefined ? "" : `${fixed(source.levelDbm, 0)} dBm`,
        source === undefined || source.levelPlace === "" ? "not said" : printable(source.levelPlace, 20),
        ...(alone ? [dB(marginIfMovedDb)] : []),
        source === undefined ? printable(emitter, 32) : radioWords(source),
      ];
    });
  const lines = tableLines(
    [
      { head: "Wi-Fi ch", align: "left" },
      { head: "loudest", align: "right" },
      { head: "at", align: "left" },
      ...(alone ? [{ head: "if it moved", align: "right" } as const] : []),
      { head: "radio", align: "left" },
    ],
    rows,
    style.columnCount,
  );
  const hidden = fixes.length - rows.length;
  return hidden > 0 ? [...lines, `(and ${hidden} more: --json has them all)`] : lines;
}

/** Its address first: that is what the staff finds it by. */
function radioWords(source: SurveyEmitter): string {
  const name = source.names.length === 0 ? "hidden" : sourceName(source);
  return source.bssids.length === 0 ? name : `${source.bssids[0]} ${name}`;
}
