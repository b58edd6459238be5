import { referenceFadeLaw } from "../propagation/index.js";
import type { FadeLaw } from "../propagation/index.js";
import type { Crowd } from "../scan/index.js";
import type { FadeTerms, SceneTerms } from "../venue/index.js";
import { crowdFigures, crowdWord } from "./crowd-options.js";
import type { CrowdOptions } from "./crowd-options.js";
import { linkSetting } from "./link-options.js";
import type { LoadedVenue } from "./load-venue.js";
import { loadVenue } from "./load-venue.js";
import type { Io } from "./io.js";
import type { SurveyOptions } from "./survey-scans.js";

/** The options of every command that plans a venue. */
export interface VenueOptions extends SurveyOptions, CrowdOptions {
  readonly fade?: string;
  readonly reliability?: string;
  readonly busyShare?: string;
}

/** A venue and what the options say of how to judge it. */
export interface VenueJob {
  /** With the options' crowd figures in place of the file's. */
  readonly loaded: LoadedVenue;
  /** The crowd planned for. */
  readonly crowd: Crowd;
  readonly terms: FadeTerms & Pick<SceneTerms, "busyShareRatio">;
}

/**
 * Reads a command's venue file and its options; what they don't say is left to the planner.
 * @throws {CliError} exit 64 for an option that can't be read, and as `loadVenue`
 */
export async function venueJob(path: string, options: VenueOptions, io: Io): Promise<VenueJob> {
  const crowd = crowdWord(options.crowd);
  const { fade, reliability, busyShare } = options;
  const terms = linkSetting(
    {
      ...(fade !== undefined && { fade }),
      ...(reliability !== undefined && { reliability }),
      ...(busyShare !== undefined && { busyShare }),
    },
    "m",
  );
  const loaded = await loadVenue(path, io);
  const figures = crowdFigures(options, loaded.venue.crowd);
  return { loaded: { ...loaded, venue: { ...loaded.venue, crowd: figures } }, crowd, terms };
}

/** The terms of a job with what the planner takes where the options say nothing. */
export function fullTerms({ terms }: Pick<VenueJob, "terms">): {
  readonly reliability: number;
  readonly busyShareRatio: number;
  readonly fadeLaw: FadeLaw;
} {
  const { reliability = 0.99, busyShareRatio = 0.01, fadeLaw = referenceFadeLaw } = terms;
  return { reliability, busyShareRatio, fadeLaw };
}
