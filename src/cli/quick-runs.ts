import { runChannel } from "./commands/channel.js";
import { runConvert } from "./commands/convert.js";
import { runLink } from "./commands/link.js";
import { runProfiles } from "./commands/profiles.js";
import { runSurvey } from "./commands/survey.js";
import type { Runs } from "./run.js";

/** The commands that need no venue: a start of these reads and compiles nothing else. */
export const QUICK_RUNS: Runs = {
  survey: runSurvey,
  channel: runChannel,
  link: runLink,
  convert: runConvert,
  profiles: runProfiles,
};
