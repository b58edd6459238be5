import { printable } from "../issues/index.js";
import type { Survey } from "../scan/index.js";
import type { RadioNearby, VenueFix, VenueRequest } from "../venue/index.js";
import { fixTable } from "./fix-table.js";
import type { Sources } from "./fix-table.js";
import { dB } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { radiatedWords } from "./radiated-words.js";
import { requestWorthTable } from "./request-worth-table.js";
import { bullets } from "./section.js";

/** The heading of the section. */
export const REQUEST_TITLE = "Request to the network staff";

/** Of a place's name. */
const PLACE_COLUMNS = 14;

/** The system that would lose most, and what it would have left. */
function ifMovedWords({ system, workingMarginIfMovedDb }: VenueFix): string {
  return system === null ? "" : `${printable(system, 10)} ${dB(workingMarginIfMovedDb)}`;
}

/**
 * What to ask of the building's network staff for a venue, ready to be handed over: which radios to fix, what
 * the systems gain, what is off in and beside the rooms, and what the systems radiate in return.
 * @param survey every scan of the venue: the names behind the request's ids
 */
export function venueRequestLines(request: VenueRequest, survey: Survey, style: TextStyle): string[] {
  const { fix, presumed, terms } = requestStatements(request, survey);
  const asks = [fix, ...presumed, offWords(request, sourcesOf(survey))];
  return [
    ...fixTable(request.fixes, sourcesOf(survey), style, ifMovedWords, PLACE_COLUMNS),
    ...bullets(asks, style),
    ...requestWorthTable(request.systems, style),
    ...bullets(terms, style),
  ];
}

/** The request in statements: which radios to fix, whose is not known, what it rests on and what we radiate in return. */
export function requestStatements(
  request: VenueRequest,
  survey: Survey,
): { readonly fix: string; readonly presumed: string[]; readonly terms: string[] } {
  return {
    fix: fixWords(request),
    presumed: presumedWords(request, sourcesOf(survey)),
    terms: [
      "Margins are those of each system's weakest receiver, our other systems apart; every radio that isn't fixed is taken on its worst of Wi-Fi 1, 6, 11; handsets go with the radios, and away with 2.4 GHz (assumed).",
      ...(survey.sweep === null
        ? []
        : [
            "A power sweep counts as it was made: what the radios put into it can't be taken out, so the last two figures may be too low.",
          ]),
      ...radiationLines(request),
    ],
  };
}

function sourcesOf(survey: Survey): Sources {
  return new Map(survey.emitters.map((source) => [source.emitter, source]));
}

function fixWords({ fixes, buildingCount }: VenueRequest): string {
  if (buildingCount === 0) return "No radio of the building's was heard: nothing to fix.";
  if (fixes.length === 0)
    return "No radio need be fixed: wherever the building's go, every system keeps its margin to 1 dB.";
  const these = fixes.length === 1 ? "this radio" : `these ${fixes.length} radios of ${buildingCount}`;
  return `Fix ${these} so: 20 MHz wide, automatic channel and automatic power off, from set-up to the end of the event.`;
}

/** Whose a radio is may only be presumed: nobody is asked to fix a guest's phone. */
function presumedWords({ fixes }: VenueRequest, sources: Sources): string[] {
  const presumed = fixes.filter(({ emitter }) => sources.get(emitter)?.ownerMarked === false);
  if (presumed.length === 0) return [];
  const these = presumed
    .map(({ emitter }) => sources.get(emitter)!.bssids[0] ?? printable(emitter, 32))
    .join(", ");
  return [
    `Presumed the building's by level alone (-75 dBm or more), so check first: ${these}. Mark owners under sources in the venue file.`,
  ];
}

function offWords({ nearby }: VenueRequest, sources: Sources): string {
  if (nearby.length === 0) return `${OFF_ASK}.`;
  const rooms = [...new Set(nearby.map(({ room }) => room))].map((room) => {
    const here = nearby.filter((radio) => radio.room === room);
    return `${printable(room, 20)}: ${here.map((radio) => nearbyWords(radio, sources)).join(", ")}`;
  });
  return `${OFF_ASK}. ${rooms.join("; ")}.`;
}

/** What is asked of the radios in and beside the rooms. */
export const OFF_ASK = "2.4 GHz off in and beside our rooms where guests can use 5 or 6 GHz";

function nearbyWords({ emitter, known }: RadioNearby, sources: Sources): string {
  const address = sources.get(emitter)?.bssids[0] ?? printable(emitter, 32);
  return known === "by-level"
    ? `${address} (by its level)`
    : known === "beside"
      ? `${address} (beside)`
      : address;
}

function radiationLines({ systems, eventMinutes }: VenueRequest): string[] {
  return systems.map(
    ({ system, radiates }, index) =>
      `${index === 0 ? "In return, so that you can judge it: " : ""}${printable(system, 20)} radiates ${radiatedWords(radiates)}, during set-up and the event (${Number(
        (eventMinutes / 60).toFixed(1),
      )} h) only.`,
  );
}
