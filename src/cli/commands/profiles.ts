import { profilesText, profileText } from "../../report/index.js";
import { builtInProfiles } from "../../radio/index.js";
import { finish } from "../context.js";
import type { CommonOptions, Context } from "../context.js";
import { EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { loadRadio } from "../load-profile.js";

/** The radio profiles, or one with the origin of each figure. */
export async function runProfiles(context: Context<CommonOptions>): Promise<ExitCode> {
  const [name] = context.words;
  if (name === undefined) {
    await finish(context, {
      json: () => ({ schema: "stillband/profiles@1", issues: [], profiles: builtInProfiles }),
      text: (style) => profilesText(builtInProfiles, style),
      issues: [],
    });
    return EXIT.ok;
  }
  const { profile, issues } = await loadRadio({ profile: name }, context.io);
  await finish(context, {
    json: () => ({ schema: "stillband/profiles@1", issues, profiles: [profile] }),
    text: (style) => profileText(profile, style),
    issues,
  });
  return EXIT.ok;
}
