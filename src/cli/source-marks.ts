import { isNamedBy, toEmitters } from "../scan/index.js";
import type { BuildSurveyOptions, Survey } from "../scan/index.js";
import { wifiChannelsInUse } from "../venue/index.js";
import type { Place, Venue } from "../venue/index.js";

/** A source whose owner nobody knows is not the building's: the crowd doesn't load it, no request is made for it. */
export function marksOf({ sources }: Venue): Pick<BuildSurveyOptions, "building" | "neighbour"> {
  const marked = (isOwn: boolean): string[] =>
    sources.filter(({ owner }) => (owner === "building") === isOwn).map(({ source }) => source);
  return { building: marked(true), neighbour: marked(false) };
}

/** Guests are on the house's Wi-Fi: the sources marked as the building's or, where none is, presumed to be. */
export function handsetChannelsOf(survey: Survey): number[] {
  const own = survey.emitters.filter(({ owner }) => owner === "building");
  const marked = own.filter(({ ownerMarked }) => ownerMarked);
  const ids = new Set((marked.length > 0 ? marked : own).map(({ emitter }) => emitter));
  return wifiChannelsInUse(toEmitters(survey), ({ id }) => ids.has(id));
}

/** Where the sources are whose place the venue file gives, by id. */
export function sourcePlacesOf({ sources }: Venue, { emitters }: Survey): ReadonlyMap<string, Place> {
  const places = sources.flatMap(({ source, at }) => (at === null ? [] : [{ source, at }]));
  return new Map(
    emitters.flatMap((heard) => {
      const place = places.find(({ source }) => isNamedBy(heard, source));
      return place === undefined ? [] : [[heard.emitter, place.at] as const];
    }),
  );
}
