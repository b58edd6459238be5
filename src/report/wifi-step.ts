import { SLACK } from "../units/index.js";
import type { ChannelReport } from "./channel-report.js";

/** What to do about Wi-Fi, in the few words of the opening block; null where nothing was worked out. */
export function wifiStep({ wifi, plan }: ChannelReport): string | null {
  const fixes = wifi?.request?.fixes ?? [];
  const survivor = wifi?.moves.survivor ?? null;
  if (wifi === null || wifi.moves.movingIds.length === 0) return null;
  if (wifi.moves.recommendedHolds === true)
    return `let Wi-Fi move: radio ch ${plan.recommended.channel} holds`;
  if (fixes.length === 0) return null;
  const channels = [...new Set(fixes.map(({ wifiChannel }) => wifiChannel))];
  const radios = fixes.length === 1 ? "radio" : "radios";
  const fixed =
    channels.length === 1 ? `${radios} fixed on Wi-Fi ch ${channels[0]}` : `Wi-Fi ${radios} fixed as listed`;
  const instead = survivor === null ? "" : `, or use radio ch ${survivor.channel}`;
  return `have ${fixes.length} ${fixed}${instead}`;
}

/** Where nothing is clear: what to ask of the network staff; null where the request would not make the link work. */
export function requestStep({ wifi, plan }: ChannelReport): string | null {
  const { fixes, marginIfGrantedDb } = wifi?.request ?? { fixes: [], marginIfGrantedDb: null };
  const reference = plan.link.reference;
  if (plan.hopSet !== null || reference === null || fixes.length === 0 || marginIfGrantedDb === null)
    return null;
  const leastDb = Math.min(reference.sensitivityMarginDb, marginIfGrantedDb);
  if (leastDb - reference.fadeAllowanceDb < -SLACK) return null;
  return `ask network staff to fix ${fixes.length} ${fixes.length === 1 ? "radio" : "radios"} as listed`;
}
