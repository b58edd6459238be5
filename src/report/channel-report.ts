import type { PathPrediction } from "../commissioning/index.js";
import type { Issue } from "../issues/index.js";
import type { RegulationReview } from "../radio/index.js";
import type { Survey } from "../scan/index.js";
import type { BandProfile } from "../scorer/index.js";
import type { ChannelPlan, WifiPlan } from "../venue/index.js";

/** All that the main job's report tells, in whatever form. */
export interface ChannelReport {
  readonly plan: ChannelPlan;
  readonly survey: Survey;
  readonly band: BandProfile;
  /** The plan and the Wi-Fi around it; null where nobody asked. */
  readonly wifi: WifiPlan | null;
  /** How loss grows with distance, in words. */
  readonly pathWords: string;
  /**
   * What a model fitted on site expects of readings at a 3-D distance: path loss with its interval; null where the
   * path model is not such a one.
   */
  readonly predictAt: ((distanceM: number) => PathPrediction) | null;
  /** The antennas in words; null where the profile's gain alone is known. */
  readonly antennaWords: { readonly tx: string | null; readonly rx: string | null };
  /** The fade law, in words. */
  readonly fadeWords: string;
  /** The region's rule, in words; null when none was asked for: power was then not judged. */
  readonly regionWords: string | null;
  /** How far a power that the user typed breaks the region's rule, dB; 0 where it doesn't or none was named. */
  readonly breachDb: number;
  /** The radio against each point of the region's rule; null when none was asked for. */
  readonly regulation: RegulationReview | null;
  /** What is not of the scans: profile, region, options. */
  readonly issues: readonly Issue[];
}
