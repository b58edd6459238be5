import type { ChannelPlan, PlannedChannel } from "../venue/index.js";
import type { ChannelReport } from "./channel-report.js";
import { surveyBlock, sweepBlock } from "./survey-json.js";

/** `stillband channel --json`: numbers are not rounded, null comes with a reason. */
export function channelJson(report: ChannelReport): object {
  const { plan, survey } = report;
  return {
    schema: "stillband/channel@1",
    issues: [...report.issues, ...survey.issues],
    survey: surveyBlock(survey),
    sweep: sweepBlock(survey),
    profile: profileBlock(plan),
    receiver: receiverBlock(report),
    ranking: plan.ranking.map(rankingEntry),
    recommended: plan.recommended,
    backup: plan.backup,
    hopSet: plan.hopSet,
    link: linkBlock(plan),
    frames: plan.frames,
  };
}

/** The radio in brief. */
export function profileBlock({ setting }: ChannelPlan): object {
  const { name, generic, channels } = setting.profile;
  return { name, channelCount: channels.length, generic };
}

/** What the ranking was made for. */
export function receiverBlock({ plan, pathWords, fadeWords, regionWords }: ChannelReport): object {
  const { distanceM, reliability, busyShareRatio, burstMs } = plan.setting;
  return {
    distanceM,
    pathModel: pathWords,
    fadeLaw: fadeWords,
    reliability,
    busyShareRatio,
    burstMs,
    region: regionWords,
  };
}

function rankingEntry(score: PlannedChannel): object {
  const { rank, channel, centreMhz, wantedDbm, marginDb, interferenceDbm, clearAirRatio, allowed, reason } =
    score;
  const contributors = score.contributors.map(
    ({ emitter, inChannelDbm, airtimeRatio, airtimeAssumed, onRatio }) => ({
      emitter,
      inChannelDbm,
      airtimeRatio,
      airtimeAssumed,
      onRatio,
    }),
  );
  return {
    rank,
    channel,
    centreMhz,
    wantedDbm,
    marginDb,
    interferenceDbm,
    spokenBy: score.spokenBy,
    clearAirRatio,
    clearAirSpokenBy: score.clearAirSpokenBy,
    frames: score.frames,
    allowed,
    reason,
    contributors,
  };
}

/** The link by distance. */
export function linkBlock({ link }: ChannelPlan): object {
  const {
    channel,
    frequencyMhz,
    interferenceDbm,
    rows,
    reachM,
    reachReason,
    reachNoSightM,
    reachNoSightReason,
  } = link;
  const { fadeAllowanceDb, noSightFadeAllowanceDb } = link;
  return {
    channel,
    frequencyMhz,
    interferenceDbm,
    fadeAllowanceDb,
    noSightFadeAllowanceDb,
    rows,
    reachM,
    reachReason,
    reachNoSightM,
    reachNoSightReason,
  };
}
