import { cautionsFor, SCAN_DRILL, surveyForm } from "../../install/index.js";
import type { Issue } from "../../issues/index.js";
import { formHtml, formJson, formText } from "../../report/index.js";
import type { FormReport, FormRoom } from "../../report/index.js";
import type { Venue } from "../../venue/index.js";
import { finish, unitOf } from "../context.js";
import type { CommonOptions, Context } from "../context.js";
import type { ExitCode } from "../exit.js";
import { loadVenue } from "../load-venue.js";
import { exitFor } from "../outcome.js";
import { badOption, plainNumber } from "../words.js";

/** The options of the blank form. */
export interface FormOptions extends CommonOptions {
  readonly html?: boolean;
  readonly rooms?: string;
  readonly points?: string;
}

/** The survey form to print and fill in; with a venue its rooms and luminaires are named on it. */
export async function runForm(context: Context<FormOptions>): Promise<ExitCode> {
  const { options, io, words } = context;
  const [path] = words;
  const roomCount = countWord("--rooms", options.rooms, MOST_ROOMS);
  const pointCount = countWord("--points", options.points, MOST_POINTS);
  const loaded = path === undefined ? null : await loadVenue(path, io);
  const issues: readonly Issue[] = loaded?.issues ?? [];
  const venue = loaded?.venue ?? null;
  const report: FormReport = {
    venueName: venue?.name ?? null,
    units: options.units === undefined && venue !== null ? venue.units : unitOf(options),
    rooms: [...namedRooms(venue, pointCount), ...blankRooms(venue, roomCount, pointCount)],
    sections: surveyForm(),
    drill: SCAN_DRILL,
    cautions: cautionsFor(["overhead", "lift", "drilling", "mains", "emergency"]),
  };
  const isHtml = options.html === true || /\.html?$/i.test(options.output ?? "");
  await finish(context, {
    json: () => formJson(report, issues),
    text: (style) => (isHtml ? formHtml(report) : formText(report, style)),
    issues,
  });
  return exitFor(context, issues);
}

const MOST_ROOMS = 50;
const MOST_POINTS = 200;
/** Blank cards for a room of which no luminaire is known. */
const POINT_COUNT = 8;

/** Rooms of a venue with their luminaires, and further blank ones where asked for. */
function namedRooms(venue: Venue | null, pointCount: number | undefined): FormRoom[] {
  return (venue?.rooms ?? []).map(({ name }) => {
    const known = venue!.luminaires.filter(({ room }) => room === name).map((luminaire) => luminaire.name);
    const more = pointCount ?? (known.length > 0 ? 0 : POINT_COUNT);
    return { name, points: [...known, ...blankPoints(more)] };
  });
}

function blankRooms(
  venue: Venue | null,
  roomCount: number | undefined,
  pointCount: number | undefined,
): FormRoom[] {
  const count = roomCount ?? (venue === null ? 1 : 0);
  return Array.from({ length: count }, () => ({
    name: null,
    points: blankPoints(pointCount ?? POINT_COUNT),
  }));
}

function blankPoints(count: number): null[] {
  return Array.from({ length: count }, () => null);
}

function countWord(flag: string, text: string | undefined, most: number): number | undefined {
  if (text === undefined) return undefined;
  const count = plainNumber(text);
  if (!Number.isInteger(count) || count < 0 || count > most)
    throw badOption(flag, `a whole number from 0 to ${most}`, text, "3");
  return count;
}
