import type { Emitter } from "../band/index.js";
import type { Survey } from "./survey.js";
import { wifiShape } from "./wifi-shape.js";

/**
 * @returns the survey's radios as the scorer takes them: loudest place, masks by standard, turns by primary channel
 * @see {@link buildSurvey}
 */
export function toEmitters(survey: Survey): Emitter[] {
  return survey.emitters.map((source) => ({
    id: source.emitter,
    centreMhz: source.centreMhz,
    shape: wifiShape(source.standard, source.widthMhz),
    levelDbm: source.levelDbm,
    airtimeRatio: source.airtimeRatio,
    airtimeAssumed: source.airtimeAssumed,
    contentionChannel: source.channel,
  }));
}
