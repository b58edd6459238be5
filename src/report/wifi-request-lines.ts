import type { WifiFix, WifiPlan } from "../venue/index.js";
import { fixTable } from "./fix-table.js";
import type { ChannelReport } from "./channel-report.js";
import { dB } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { radiatedWords } from "./radiated-words.js";
import { bullets } from "./section.js";

/** What to ask of the building's network staff, ready to be handed over. */
export function wifiRequestLines(report: ChannelReport, wifi: WifiPlan, style: TextStyle): string[] {
  const { request, radiated } = wifi;
  if (request === null || radiated === null) return ["Nothing to ask: there is no radio channel."];
  const { fixes, marginIfGrantedDb } = request;
  const sources = new Map(report.survey.emitters.map((source) => [source.emitter, source]));
  const isTold = fixes.some(({ marginIfMovedDb }) => marginIfMovedDb !== null);
  const ifMoved = isTold ? ({ marginIfMovedDb }: WifiFix): string => dB(marginIfMovedDb) : null;
  const table = fixTable(fixes, sources, style, ifMoved, PLACE_COLUMNS);
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

/** Of a place's name. */
const PLACE_COLUMNS = 20;
