import type { Circuit } from "./circuit-types.js";
import type { CrewKind } from "./crew-cell.js";
import type { HangFigures } from "./hang-figures.js";

/** What a crew's own column fills, and with what. */
export type CrewColumn =
  | { readonly of: "hang"; readonly key: keyof HangFigures; readonly holds: CrewKind | readonly string[] }
  | { readonly of: "circuit"; readonly key: keyof Circuit; readonly holds: CrewKind | readonly string[] };

const hang = (key: keyof HangFigures, holds: CrewColumn["holds"]): CrewColumn => ({ of: "hang", key, holds });
const circuit = (key: keyof Circuit, holds: CrewColumn["holds"]): CrewColumn => ({
  of: "circuit",
  key,
  holds,
});
const YES_NO = ["yes", "no", "unknown"];

/** The crew's columns of the survey form that the sheets compute with, and a few more. */
export const CREW_COLUMNS: Readonly<Record<string, CrewColumn>> = {
  suspension: hang("suspension", ["chain", "wire-rope", "stem"]),
  hangs_from: hang("hangsFrom", ["box", "structure"]),
  box_listed: hang("boxListed", YES_NO),
  box_rated: hang("boxRatedKg", "weight"),
  hook_rated: hang("hookRatedKg", "weight"),
  suspension_rated: hang("suspensionRatedKg", "weight"),
  safety_rated: hang("safetyRatedKg", "weight"),
  body_height: hang("bodyHeightM", "length"),
  link_pitch: hang("stepM", "length"),
  canopy_height: hang("canopyM", "length"),
  top_hook: hang("topHookM", "length"),
  bottom_hook: hang("bottomHookM", "length"),
  eye_bolt: hang("eyeBoltM", "length"),
  inlet_reach: hang("inletReachM", "length"),
  safety_offset: hang("safetyOffsetM", "length"),
  slope: hang("slopeDeg", "angle"),
  receiver_weight: hang("receiverKg", "weight"),
  control: circuit("control", [
    ...["none", "dimmer", "wall-switch", "sensor", "time-clock", "transfer-switch", "unknown"],
  ]),
  feed: circuit("feed", ["own-box", "through-fed", "unknown"]),
  breaker: circuit("breakerA", "amperes"),
  earth: circuit("earth", YES_NO),
  shared_neutral: circuit("sharedNeutral", YES_NO),
  drivers_allowed: circuit("mostDriversCount", "count"),
};
