import type { Survey } from "../scan/index.js";
import type { VenueRequest } from "../venue/index.js";

/** The request of `link VENUE` and `rooms` as JSON. */
export function venueRequestBlock(request: VenueRequest, survey: Survey): object {
  const sources = new Map(survey.emitters.map((source) => [source.emitter, source]));
  const heard = (emitter: string): object => {
    const source = sources.get(emitter);
    return {
      emitter,
      names: source?.names ?? [],
      place: source?.levelPlace ?? "",
      levelDbm: source?.levelDbm ?? null,
    };
  };
  return {
    fix: request.fixes.map(({ emitter, ...fix }) => ({ ...heard(emitter), ...fix })),
    buildingCount: request.buildingCount,
    widthMhz: 20,
    automaticChannel: false,
    automaticPower: false,
    off: request.nearby.map(({ emitter, ...where }) => ({ ...heard(emitter), ...where })),
    systems: request.systems,
    eventMinutes: request.eventMinutes,
    hours: "event",
  };
}
