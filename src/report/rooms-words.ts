import { printable } from "../issues/index.js";
import type { PlannedSystem, SystemOnChannel } from "../venue/index.js";
import { fixed } from "./number-format.js";
import { verdictMark } from "./verdict-mark.js";

/** `radio ch 3 (2422 MHz)`, or that the radio hops. */
export function onWords({ channel, centreMhz }: Pick<SystemOnChannel, "channel" | "centreMhz">): string {
  return channel === null ? "hopping" : `radio ch ${channel} (${centreMhz} MHz)`;
}

/** A system's fallback as a channel with its centre; why there is none, else. */
export function fallbackWords({ fallback, system }: PlannedSystem): string {
  const { channel, reason } = fallback;
  const centreMhz = system.profile.channels.find((one) => one.channel === channel)?.centreMhz ?? null;
  return channel === null ? `no fallback: ${reason}` : `fallback ${onWords({ channel, centreMhz })}`;
}

/** Mark and dB to one place: `x -13.6 dB`. */
export function markedDb(workingMarginDb: number): string {
  const figure = Number.isFinite(workingMarginDb) ? `${fixed(workingMarginDb, 1)} dB` : "no signal";
  return `${verdictMark(workingMarginDb)} ${figure}`;
}

/** What limits a receiver. */
export function limitsWords(limit: "range" | "interference"): string {
  return limit === "range" ? "its own range" : "interference";
}

/** A name from the venue file, short and harmless. */
export function shortName(name: string): string {
  return printable(name, 14);
}
