import type { Place } from "./venue-room.js";

/** What else sends at 2.4 GHz. */
export type EmitterType =
  | "bluetooth"
  | "ieee-802.15.4"
  | "microwave-oven"
  | "analogue-video"
  | "wireless-dmx"
  | "microphone"
  | "intercom"
  | "camera-control"
  | "video-link"
  | "hearing-assistance"
  | "other";

/** Another emitter, where it stands and what it sends. */
export interface VenueEmitter {
  readonly name: string;
  readonly type: EmitterType;
  readonly at: Place;
  /** Null: as the type has it (assumed). */
  readonly eirpDbm: number | null;
  readonly airtimeRatio: number | null;
  readonly centreMhz: number | null;
  readonly bandwidthMhz: number | null;
}
