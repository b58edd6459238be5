import { hangJson } from "./hang-json.js";
import { patchJson } from "./patch-json.js";
import { placeJson } from "./place-json.js";
import type { PlanReport } from "./plan-report.js";
import { roomsJson } from "./rooms-json.js";
import { surveyJson } from "./survey-json.js";
import { venueLinkJson } from "./venue-link-json.js";

/**
 * The plan file: the record that later checks compare with, then all that the sheets tell. Numbers are not rounded,
 * null comes with a reason; every number of the report page is one of these.
 */
export function planJson(report: PlanReport): object {
  const { record, revision, rooms, links, place, surveys, patch, hang, bands, curves, fits } = report;
  const { units } = rooms.venue;
  const { schema, ...rest } = record;
  return {
    schema,
    issues: report.issues,
    ...rest,
    revision,
    rooms: part(roomsJson(rooms)),
    links: withLoudest(part(venueLinkJson(links)) as LinksPart),
    place: part(placeJson(place)),
    surveys: surveys.map((one) => part(surveyJson(one))),
    patch: patch === null ? null : part(patchJson(patch)),
    patchReason: patch === null ? NO_LUMINAIRES : null,
    hang: hang === null ? null : part(hangJson(hang, units)),
    hangReason: hang === null ? NO_LUMINAIRES : null,
    bands,
    curves,
    fits,
  };
}

interface LinksPart {
  readonly systems: readonly {
    readonly receivers: readonly { readonly contributors: readonly object[] }[];
  }[];
}

/** So many of what a receiver hears are kept; `link --json` has all. */
const MOST_CONTRIBUTORS = 12;

/** Hundreds of sources at each of hundreds of receivers are no use months later: the loudest are. */
function withLoudest(links: LinksPart): object {
  return {
    ...links,
    systems: links.systems.map((system) => ({
      ...system,
      receivers: system.receivers.map((one) => ({
        ...one,
        contributors: one.contributors.slice(0, MOST_CONTRIBUTORS),
        contributorCount: one.contributors.length,
      })),
    })),
  };
}

const NO_LUMINAIRES = "the venue file lists no luminaires";

/** A command's value as a part of the plan's: the whole has the schema's name and the issues. */
function part(value: object): object {
  return Object.fromEntries(Object.entries(value).filter(([key]) => key !== "schema" && key !== "issues"));
}
