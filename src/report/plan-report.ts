import type { PlanRecord } from "../commissioning/index.js";
import type { Issue } from "../issues/index.js";
import type { BandProfile } from "../scorer/index.js";
import type { HangReport } from "./hang-report.js";
import type { PatchReport } from "./patch-report.js";
import type { PlaceReport } from "./place-report.js";
import type { RoomsReport } from "./rooms-report.js";
import type { SurveyReport } from "./survey-report.js";
import type { VenueLinkReport } from "./venue-link-report.js";

/** The whole job of a venue: all that the plan's folder tells, in whatever form. */
export interface PlanReport {
  /** What went in, what was assumed, what came out: the part that a later check compares with. */
  readonly record: PlanRecord;
  /** The sheets' revision; null where none was named. */
  readonly revision: string | null;
  readonly rooms: RoomsReport;
  /** Every receiver on the planned channels, the other systems on the air. */
  readonly links: VenueLinkReport;
  readonly place: PlaceReport;
  /** One for each way in which the venue's radios listen. */
  readonly surveys: readonly SurveyReport[];
  /** Null where the venue lists no luminaire. */
  readonly patch: PatchReport | null;
  readonly hang: HangReport | null;
  readonly bands: readonly RoomBand[];
  readonly curves: readonly SystemCurve[];
  /** Rooms whose path model was fitted on site with its residuals kept. */
  readonly fits: readonly RoomFit[];
  /** Are other people's network names shown on the client's and the network staff's sheets? */
  readonly showsNames: boolean;
  readonly issues: readonly Issue[];
}

/** The band at a room's weakest receiver of a system. */
export interface RoomBand {
  readonly room: string;
  readonly system: string;
  readonly receiver: string;
  /** Interference and noise over the receiver's noise, with the crowd planned for. */
  readonly band: BandProfile;
  /** The system's own, rising in frequency. */
  readonly channels: readonly { readonly channel: number; readonly centreMhz: number }[];
  /** Null for a hopping radio. */
  readonly channel: number | null;
  readonly fallbackChannel: number | null;
  /** The level above its noise at which the wanted signal there is spoilt, dB; null: no signal there. */
  readonly spoiltAboveNoiseDb: number | null;
}

/** A system's working margin by distance, gains, walls and interference as at its weakest receiver. */
export interface SystemCurve {
  readonly system: string;
  readonly room: string;
  /** The weakest that has a signal. */
  readonly receiver: string;
  readonly points: readonly CurvePoint[];
  /** m; null with the reason. */
  readonly reachM: number | null;
  readonly reachReason: string | null;
  /** Every receiver of the system with a signal, where it stands with gains, walls and interference of its own. */
  readonly receivers: readonly (CurvePoint & { readonly receiver: string })[];
}

export interface CurvePoint {
  readonly distanceM: number;
  readonly workingMarginDb: number;
}

/** What a fitted path model left over. */
export interface RoomFit {
  readonly room: string;
  readonly residuals: readonly {
    readonly distanceM: number;
    readonly residualDb: number;
    readonly heard: boolean;
  }[];
}
