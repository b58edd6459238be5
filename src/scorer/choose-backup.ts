import { SLACK } from "../units/index.js";
import type { ChannelScore } from "./channel-score.js";

/** A fallback may be this much worse than the best, dB, before independence from the same trouble stops counting. */
const WITHIN_DB = 6;
/** Far enough that no one 20 MHz transmitter sits on both, MHz. */
const APART_MHZ = 25;

/**
 * The fallback: among the other allowed channels that some scan covers, within 6 dB of the best, the highest-ranked with another
 * dominant contributor and at least 25 MHz away; else the highest-ranked with another dominant contributor;
 * else the second in rank. Two channels without any contributor count as having the same.
 * @param ranking best first
 * @returns null when no second channel is allowed
 * @see {@link rankChannels}
 */
export function chooseBackup(ranking: readonly ChannelScore[]): ChannelScore | null {
  const [best, ...others] = ranking.filter(({ allowed, spokenBy }) => allowed && spokenBy !== null);
  if (best === undefined) return null;
  const dominant = (score: ChannelScore): string | null => score.contributors[0]?.emitter ?? null;
  const unlike = others.filter(
    (score) => score.marginDb >= best.marginDb - WITHIN_DB - SLACK && dominant(score) !== dominant(best),
  );
  const far = unlike.find(({ centreMhz }) => Math.abs(centreMhz - best.centreMhz) >= APART_MHZ - SLACK);
  return far ?? unlike[0] ?? others[0] ?? null;
}
