import type { Issue } from "../../issues/index.js";
import { profilesText, profileText, regionText, regulationBlock } from "../../report/index.js";
import { builtInProfiles, profileTemplate, regionRules, regulationReview } from "../../radio/index.js";
import type { RadioProfile, RegionCode } from "../../radio/index.js";
import { finish, tellIssues } from "../context.js";
import type { CommonOptions, Context } from "../context.js";
import { CliError, EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { loadRadio, regionWord } from "../load-profile.js";
import { deliver } from "../output.js";

export type ProfilesOptions = CommonOptions & { readonly template?: boolean };

/** What is shown: the built-in profiles, or the one that was named. */
interface Shown {
  readonly profiles: readonly RadioProfile[];
  readonly issues: readonly Issue[];
}

/** The radio profiles, or one with the origin of each figure; as a template; under a region's rule. */
export async function runProfiles(context: Context<ProfilesOptions>): Promise<ExitCode> {
  const { options, words, io } = context;
  const [name] = words;
  const region = options.region === undefined ? null : regionWord(options.region);
  const shown = name === undefined ? { profiles: builtInProfiles, issues: [] } : await named(name, context);
  if (options.template === true) {
    await deliver(templateText(context, shown), options.output, io);
    await tellIssues(context, shown.issues);
  } else if (region !== null) await tellRegion(context, shown, region);
  else
    await finish(context, {
      json: () => ({ schema: SCHEMA, ...shown }),
      text: (style) =>
        name === undefined ? profilesText(shown.profiles, style) : profileText(shown.profiles[0]!, style),
      issues: shown.issues,
    });
  return EXIT.ok;
}

const SCHEMA = "stillband/profiles@1";

async function named(name: string, { io }: Context<ProfilesOptions>): Promise<Shown> {
  const { profile, issues } = await loadRadio({ profile: name }, io);
  return { profiles: [profile], issues };
}

/** @throws {CliError} exit 64 where no single profile is named, or with an option that asks for something else */
function templateText({ options, words }: Context<ProfilesOptions>, { profiles }: Shown): string {
  const next = "stillband profiles raster-13 --template -o my-radio.yaml";
  if (words.length === 0) throw new CliError(EXIT.usage, "--template: expected a profile's name", next);
  for (const flag of ["json", "region"] as const)
    if (options[flag] !== undefined)
      throw new CliError(EXIT.usage, `--template: prints YAML alone, not with --${flag}`, next);
  return profileTemplate(profiles[0]!);
}

/** The region's rule and the profiles judged by it as they stand: nothing is turned down. */
function tellRegion(
  context: Context<ProfilesOptions>,
  { profiles, issues }: Shown,
  region: RegionCode,
): Promise<void> {
  const rule = regionRules[region];
  const judged = profiles.map((profile) => ({ profile, review: regulationReview(profile, region) }));
  const regulation = {
    rule,
    judged: judged.map(({ profile, review }) => ({ profile: profile.name, ...regulationBlock(review) })),
  };
  return finish(context, {
    json: () => ({ schema: SCHEMA, issues, profiles, regulation }),
    text: (style) => regionText(rule, judged, style),
    issues,
  });
}
