import { requireFinite } from "../issues/index.js";
import { surveyChange } from "../scan/index.js";
import type { EmitterChange, Survey } from "../scan/index.js";
import { SLACK } from "../units/index.js";
import { channelToday } from "./channel-today.js";
import type { ChannelToday, RankedChannel } from "./channel-today.js";

/** A system's channel as planned, and today's ranking for it. */
export interface PlannedRanking {
  readonly system: string;
  readonly channel: number;
  /** Made from the fresh survey, best first. */
  readonly ranking: readonly RankedChannel[];
  /** dB; 0 unless given. */
  readonly fadeAllowanceDb?: number;
}

/** A system's channel in the band as it is now. */
export interface SystemToday extends ChannelToday {
  readonly system: string;
  /** Sources of its channel that are new, came from another channel, or grew by 6 dB or 0.1 of airtime; strongest first. */
  readonly causes: readonly ChannelCause[];
}

/** Why a channel is worse than it was. */
export interface ChannelCause {
  readonly emitter: string;
  readonly kind: "new" | "moved" | "grown";
  readonly inChannelDbm: number;
}

/** What changed in the band since the survey, and whether the plan still stands. */
export interface BandComparison {
  readonly verdict: "holds" | "fails" | "not-judged";
  readonly systems: readonly SystemToday[];
  readonly newSources: readonly EmitterChange[];
  readonly goneSources: readonly EmitterChange[];
  /** On another Wi-Fi channel than before. */
  readonly movedSources: readonly EmitterChange[];
  /** Airtime changed by 0.1 or more, both reported. */
  readonly airtimeChanges: readonly EmitterChange[];
  /** Level changed by 6 dB or more. */
  readonly levelChanges: readonly EmitterChange[];
}

const GROWN_DB = 6; // about what standing elsewhere in a room does: common practice, no source
const GROWN_RATIO = 0.1; // assumed

/**
 * The fresh survey against the one that the plan was made from. It fails where a system's planned channel fails,
 * is beaten by more than 3 dB, or is not ranked any more.
 * @throws {ArgumentError} when an allowance is not finite
 * @example compareBands(await buildSurvey([]), await buildSurvey([]), []).verdict; // => "not-judged"
 */
export function compareBands(
  before: Survey,
  after: Survey,
  planned: readonly PlannedRanking[],
): BandComparison {
  const changes = surveyChange(before, after);
  const both = changes.filter(({ before: then, after: now }) => then !== null && now !== null);
  const systems = planned.map(({ system, channel, ranking, fadeAllowanceDb = 0 }) => {
    requireFinite("fadeAllowanceDb", fadeAllowanceDb);
    const own = ranking.find((each) => each.channel === channel);
    const today = channelToday(channel, ranking, fadeAllowanceDb);
    return { system, ...today, causes: own === undefined ? [] : causesOf(own, changes) };
  });
  const stands = systems.every(({ verdict }) => verdict === "still-best" || verdict === "as-good");
  return {
    verdict: systems.length === 0 ? "not-judged" : stands ? "holds" : "fails",
    systems,
    newSources: changes.filter((change) => change.before === null),
    goneSources: changes.filter((change) => change.after === null),
    movedSources: both.filter(hasMoved),
    airtimeChanges: both.filter(
      (change) => hasReported(change) && Math.abs(change.airtimeChangeRatio) >= LEAST_RATIO,
    ),
    levelChanges: both.filter(({ levelChangeDb }) => Math.abs(levelChangeDb!) >= GROWN_DB - SLACK),
  };
}

const LEAST_RATIO = GROWN_RATIO - SLACK;

function hasMoved({ before, after }: EmitterChange): boolean {
  return before !== null && after !== null && before.channel !== after.channel;
}

function hasReported({ before, after }: EmitterChange): boolean {
  return before?.airtimeAssumed === false && after?.airtimeAssumed === false;
}

function causesOf({ contributors }: RankedChannel, changes: readonly EmitterChange[]): ChannelCause[] {
  const byEmitter = new Map(changes.map((change) => [change.emitter, change]));
  const causes = contributors.flatMap(({ emitter, inChannelDbm }) => {
    const change = byEmitter.get(emitter);
    const kind = change === undefined ? null : causeKind(change);
    return kind === null ? [] : [{ emitter, kind, inChannelDbm }];
  });
  return causes.sort((a, b) => b.inChannelDbm - a.inChannelDbm);
}

function causeKind(change: EmitterChange): ChannelCause["kind"] | null {
  if (change.before === null) return "new";
  if (hasMoved(change)) return "moved";
  const isLouder = (change.levelChangeDb ?? 0) >= GROWN_DB - SLACK;
  return isLouder || change.airtimeChangeRatio >= LEAST_RATIO ? "grown" : null;
}
