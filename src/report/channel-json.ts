import type { ChannelPlan, PlannedChannel } from "../venue/index.js";
import { framesBlock, hopSetBlock, jobBlock } from "./audience-json.js";
import type { ChannelReport } from "./channel-report.js";
import { finite, linkBlock, practiceBlock } from "./link-block.js";
import { regulationBlock } from "./regulation-json.js";
import { surveyBlock, sweepBlock } from "./survey-json.js";
import { wifiBlocks } from "./wifi-json.js";

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
    regulation: regulationBlock(report.regulation),
    ranking: plan.ranking.map((score) => ({
      ...rankingEntry(score),
      ...finite({ ifWifiMovesDb: report.wifi?.moves.ifWifiMovesDb.get(score.channel) ?? null }),
    })),
    recommended: plan.recommended,
    backup: plan.backup,
    hopSet: hopSetBlock(plan),
    link: linkBlock(report),
    practice: practiceBlock(plan.practice),
    frames: framesBlock(plan),
    ...jobBlock(plan),
    ...wifiBlocks(report),
  };
}

/** The radio in brief. */
export function profileBlock({ setting }: ChannelPlan): object {
  const { name, generic, channels } = setting.profile;
  return { name, channelCount: channels.length, generic };
}

/** What the ranking was made for. */
export function receiverBlock({ plan, pathWords, fadeWords, regionWords }: ChannelReport): object {
  const { reliability, busyShareRatio, burstMs } = plan.setting;
  const { distanceM, site } = plan.setting;
  const climbM = site.heights === null ? 0 : site.heights.rxHeightM - site.heights.txHeightM;
  return {
    distanceM: Math.hypot(distanceM, climbM),
    floorDistanceM: site.heights === null ? null : distanceM,
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
    ...finite({ wantedDbm, marginDb }),
    marginReason: marginDb === -Infinity ? "no wanted signal: in an antenna's null" : null,
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
