import { venueLinkJson, venueLinkText } from "../report/index.js";
import type { VenueLinkReport } from "../report/index.js";
import { planVenueLinks } from "../venue/index.js";
import type { Venue, VenueReceiver, VenueSystem } from "../venue/index.js";
import { finish } from "./context.js";
import type { Context } from "./context.js";
import type { ExitCode } from "./exit.js";
import { linkReport } from "./link-report.js";
import { linkSetting } from "./link-options.js";
import { refuseStrangeOptions } from "./link-operand-options.js";
import { exitFor } from "./outcome.js";
import { venueJob } from "./venue-options.js";
import type { VenueJob, VenueOptions } from "./venue-options.js";
import { named, systemScenes, systemsAsked } from "./venue-systems.js";
import type { SystemScene } from "./venue-systems.js";
import { badOption } from "./words.js";

/** The options of `link` with a venue file. */
export interface VenueLinkOptions extends VenueOptions {
  readonly channel?: string;
  readonly system?: string;
  readonly receiver?: string;
  readonly burstMs?: string;
  readonly eventMinutes?: string;
}

/** Every receiver's budget in a venue, weakest first, or one receiver's line by line. */
export async function runVenueLink(context: Context<VenueLinkOptions>): Promise<ExitCode> {
  refuseStrangeOptions(context, true);
  const { options, io, words } = context;
  const job = await venueJob(words[0]!, options, io);
  const { burstMs, eventMinutes } = linkSetting(
    {
      ...(options.burstMs !== undefined && { burstMs: options.burstMs }),
      ...(options.eventMinutes !== undefined && { eventMinutes: options.eventMinutes }),
    },
    "m",
  );
  const venue = eventMinutes === undefined ? job.loaded.venue : { ...job.loaded.venue, eventMinutes };
  const systems = judgedSystems(venue, options);
  const pairs = await systemScenes(context, { ...job.loaded, venue }, systems);
  const report = venueLinkReport(job, pairs, {
    receiver: options.receiver ?? null,
    burstMs: burstMs ?? 2,
    channelOf: channelsOf(systems, options.channel),
  });
  const inUnits = { ...context, options: { ...options, units: options.units ?? venue.units } };
  await finish(inUnits, {
    json: () => venueLinkJson(report),
    text: (style) => venueLinkText(report, style),
    issues: report.issues,
  });
  return exitFor(context, report.issues);
}

interface Asked {
  readonly receiver: string | null;
  readonly burstMs: number;
  readonly channelOf: ReadonlyMap<string, number>;
}

function venueLinkReport(
  job: VenueJob,
  pairs: readonly SystemScene[],
  { receiver, burstMs, channelOf }: Asked,
): VenueLinkReport {
  const { crowd, terms } = job;
  const [, scene] = pairs[0]!;
  const systems = pairs.flatMap(([{ name }, its]) =>
    planVenueLinks(its.siteWith(crowd), {
      ...terms,
      survey: its.roomsWith(crowd),
      systems: [name],
      channelOf,
      burstMs,
    }),
  );
  return linkReport(job, scene, systems, { receiver, burstMs, issues: scene.issues });
}

/** `--system`, and the system of `--receiver`. */
function judgedSystems(venue: Venue, { system, receiver }: VenueLinkOptions): readonly VenueSystem[] {
  const systems = systemsAsked(venue, system);
  if (receiver === undefined) return systems;
  const theirs = venue.receivers.filter((one) => systems.some(({ name }) => name === one.system));
  const found: VenueReceiver = named("--receiver", "a receiver of the venue file", theirs, receiver);
  return systems.filter(({ name }) => name === found.system);
}

/** `--channel` for every system judged that stays on one. */
function channelsOf(systems: readonly VenueSystem[], text: string | undefined): ReadonlyMap<string, number> {
  if (text === undefined) return new Map();
  const fixed = systems.filter(({ profile }) => profile.hopping === null);
  if (fixed.length === 0) throw badOption("--channel", "none beside systems that hop", text, "");
  const numbersOf = ({ profile, allowedChannels }: VenueSystem): number[] =>
    profile.channels
      .map(({ channel }) => channel)
      .filter((channel) => allowedChannels?.includes(channel) ?? true);
  const common = numbersOf(fixed[0]!).filter((channel) =>
    fixed.every((one) => numbersOf(one).includes(channel)),
  );
  if (!/^\d+$/.test(text) || !common.includes(Number(text)))
    throw badOption(
      "--channel",
      `a radio channel that every system judged may use (${common.join(", ") || "there is none: name a --system"})`,
      text,
      String(common[0] ?? ""),
    );
  return new Map(fixed.map(({ name }) => [name, Number(text)]));
}
