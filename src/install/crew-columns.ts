import type { Circuit } from "./circuit-types.js";
import type { CrewKind } from "./crew-cell.js";
import type { HangFigures } from "./hang-figures.js";

/** What a crew's own columns say of a luminaire itself, beside hardware and circuit. */
export interface CrewPoint {
  /** The floor under it above (+) or below (−) the room's datum, m. */
  readonly floorOffsetM?: number;
  readonly trimFrom?: "datum" | "local-floor";
  /** Place in the order of hanging. */
  readonly hangIndex?: number;
  /** Cord from its box, or from the luminaire before it, m. */
  readonly feedM?: number;
  readonly powerFactorRatio?: number;
}

/** What a crew's own column fills, and with what. */
export type CrewColumn =
  | { readonly of: "hang"; readonly key: keyof HangFigures; readonly holds: CrewKind | readonly string[] }
  | { readonly of: "circuit"; readonly key: keyof Circuit; readonly holds: CrewKind | readonly string[] }
  | { readonly of: "point"; readonly key: keyof CrewPoint; readonly holds: CrewKind | readonly string[] };

const hang = (key: keyof HangFigures, holds: CrewColumn["holds"]): CrewColumn => ({ of: "hang", key, holds });
const circuit = (key: keyof Circuit, holds: CrewColumn["holds"]): CrewColumn => ({
  of: "circuit",
  key,
  holds,
});
const point = (key: keyof CrewPoint, holds: CrewColumn["holds"]): CrewColumn => ({ of: "point", key, holds });
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
  weave_share: hang("weaveRatio", "ratio"),
  box_make_up: hang("boxMakeUpM", "length"),
  safety_offset: hang("safetyOffsetM", "length"),
  safety_slack: hang("safetySlackM", "length"),
  slope: hang("slopeDeg", "angle"),
  suspension_weight: hang("suspensionKgPerM", "weight-per-length"),
  cord_weight: hang("cordKgPerM", "weight-per-length"),
  hardware_weight: hang("hardwareKg", "weight"),
  receiver_weight: hang("receiverKg", "weight"),
  control: circuit("control", [
    ...["none", "dimmer", "wall-switch", "sensor", "time-clock", "transfer-switch", "unknown"],
  ]),
  feed: circuit("feed", ["own-box", "through-fed", "unknown"]),
  supply: circuit("supplyV", "volts"),
  breaker: circuit("breakerA", "amperes"),
  earth: circuit("earth", YES_NO),
  shared_neutral: circuit("sharedNeutral", YES_NO),
  upstream_drop: circuit("upstreamDropV", "volts"),
  drivers_allowed: circuit("mostDriversCount", "count"),
  floor_offset: point("floorOffsetM", "offset"),
  trim_from: point("trimFrom", ["datum", "local-floor"]),
  hang_order: point("hangIndex", "count"),
  feed_length: point("feedM", "length"),
  power_factor: point("powerFactorRatio", "ratio"),
};
