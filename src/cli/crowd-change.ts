import type { ChannelChange, CrowdChange, CrowdSummary } from "../report/index.js";
import { buildSurvey, CROWDS, surveyChange, toEmitters } from "../scan/index.js";
import type { BuildSurveyOptions, ScanImport, Survey } from "../scan/index.js";
import { rankChannels } from "../scorer/index.js";
import type { ChannelRanking, ChannelScore, RankChannelsOptions } from "../scorer/index.js";
import { scansOfCrowd } from "./crowd-summaries.js";

/** The comparison, or why there is none. */
export type ComparedCrowds =
  | { readonly change: CrowdChange; readonly changeReason: null }
  | { readonly change: null; readonly changeReason: string };

/**
 * The emptiest named crowd against the fullest: the radios that changed, and the margins of the radio's
 * channels, each crowd ranked by its own scans alone.
 * @param terms the radio and its wanted level at the reference receiver, by channel
 */
export function crowdChange(
  imports: readonly ScanImport[],
  options: BuildSurveyOptions,
  terms: Omit<RankChannelsOptions, "emitters" | "sweeps">,
  crowds: readonly CrowdSummary[],
): ComparedCrowds {
  const named = CROWDS.filter((word) =>
    crowds.some(({ crowd, busyRatio }) => crowd === word && busyRatio !== null),
  );
  const [from, to] = [named[0], named[named.length - 1]];
  if (from === undefined || to === undefined || from === to)
    return {
      change: null,
      changeReason: "scans of two named crowds are wanted (--crowd empty, part or full)",
    };
  const before = buildSurvey(scansOfCrowd(imports, from), options);
  const after = buildSurvey(scansOfCrowd(imports, to), options);
  const [was, is] = [rankingOf(before, terms), rankingOf(after, terms)];
  const haveBeacons = before.observationCount > 0 && after.observationCount > 0;
  const busyWhen = (word: string): number | null => crowds.find(({ crowd }) => crowd === word)!.busyRatio;
  return {
    change: {
      from,
      to,
      sources: haveBeacons ? surveyChange(before, after) : [],
      channels: terms.profile.channels.map(({ channel }) => channelChange(channel, was.ranking, is.ranking)),
      bestBeforeChannel: bestOf(was),
      bestAfterChannel: bestOf(is),
      hopSet:
        was.hopSet === null || is.hopSet === null
          ? null
          : { beforeDb: was.hopSet.marginDb, afterDb: is.hopSet.marginDb },
      beforeBusyRatio: busyWhen(from),
      afterBusyRatio: busyWhen(to),
      caveats: caveats(before, after, from, to),
    },
    changeReason: null,
  };
}

function rankingOf(survey: Survey, terms: Omit<RankChannelsOptions, "emitters" | "sweeps">): ChannelRanking {
  return rankChannels({ ...terms, emitters: toEmitters(survey), sweeps: survey.sweepLevels });
}

function bestOf({ ranking: [best] }: ChannelRanking): number | null {
  return best === undefined || !best.allowed || best.spokenBy === null ? null : best.channel;
}

function channelChange(
  channel: number,
  was: readonly ChannelScore[],
  is: readonly ChannelScore[],
): ChannelChange {
  const [before, after] = [was, is].map((ranking) => ranking.find((score) => score.channel === channel)!);
  const [beforeDb, afterDb] = [before!, after!].map(({ spokenBy, marginDb }) =>
    spokenBy === null ? null : marginDb,
  ) as [number | null, number | null];
  return {
    channel,
    centreMhz: before!.centreMhz,
    beforeDb,
    afterDb,
    changeDb: beforeDb === null || afterDb === null ? null : afterDb - beforeDb,
    beforeSpokenBy: before!.spokenBy,
    afterSpokenBy: after!.spokenBy,
  };
}

/** What the two crowds' scans do not have in common. */
function caveats(before: Survey, after: Survey, from: string, to: string): string[] {
  const one = (hasBefore: boolean, what: string, rest: string): string =>
    `${what} only when ${hasBefore ? from : to}: ${rest}`;
  const [sweptBefore, sweptAfter] = [before, after].map(({ sweepLevels }) => sweepLevels.length > 0);
  const [listBefore, listAfter] = [before, after].map(({ observationCount }) => observationCount > 0);
  const isElsewhere = before.places.join("\n") !== after.places.join("\n");
  return [
    ...(listBefore === listAfter
      ? []
      : [
          one(
            listBefore!,
            "Beacon lists",
            "the sources can't be compared, and part of the change may be the way of looking.",
          ),
        ]),
    ...(sweptBefore === sweptAfter
      ? []
      : [one(sweptBefore!, "Power sweeps", "part of the change may be what no beacon list hears.")]),
    ...(isElsewhere
      ? ["The two were not scanned at the same places: part of the change may be the place."]
      : []),
  ];
}
