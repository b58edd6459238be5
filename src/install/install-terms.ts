import type { CircuitControl } from "./circuit-types.js";

/** A radio channel as the crew's paper names it. */
export interface InstallChannel {
  readonly channel: number;
  readonly centreMhz: number;
}

/** A system on install day. */
export interface InstallSystem {
  readonly name: string;
  /** Null: a hop set, or none chosen yet. */
  readonly channel: InstallChannel | null;
  readonly fallback: InstallChannel | null;
  /** It hops, and there is no channel to set; false unless given. */
  readonly hops?: boolean;
  /** Do receivers find a new channel by themselves? */
  readonly receiversFollow: "yes" | "no" | "unknown";
  /** As its data sheet has it; null: unknown. */
  readonly relinkS: number | null;
}

/** A receiver on install day. */
export interface InstallReceiver {
  readonly name: string;
  readonly system: string;
  /** In the order of their cable. */
  readonly luminaires: readonly string[];
  /** Local mean that the plan expects at trim; null: not planned. */
  readonly predictedDbm: number | null;
}

/** A luminaire on install day. */
export interface InstallLuminaire {
  readonly name: string;
  readonly room: string;
  readonly universe: number | null;
  readonly address: number | null;
  readonly footprintSlotCount: number | null;
  readonly mode: string | null;
  readonly trimHeightM: number | null;
  readonly emergency: "yes" | "no" | "unknown";
  readonly onLinkLoss: "hold" | "dark" | "preset" | "full" | "unknown";
}

/** A circuit on install day. */
export interface InstallCircuit {
  readonly circuit: string;
  readonly control: CircuitControl;
  readonly luminaires: readonly string[];
}

/** What the checks are derived from. */
export interface InstallTerms {
  readonly systems: readonly InstallSystem[];
  readonly receivers: readonly InstallReceiver[];
  /** In the order of hanging. */
  readonly luminaires: readonly InstallLuminaire[];
  readonly circuits: readonly InstallCircuit[];
  /** As the hang sheet has it. */
  readonly doNotHang: readonly string[];
}

/** Words for a radio channel; a blank to fill in where none is settled. */
export function channelWords(channel: InstallChannel | null): string {
  return channel === null ? "radio ch ____" : `radio ch ${channel.channel} (${channel.centreMhz} MHz)`;
}

/** What a system is set to, and its fallback. @param before stands before the channel */
export function settingWords(
  { channel, fallback, hops = false }: Pick<InstallSystem, "channel" | "fallback" | "hops">,
  before = "",
): string {
  if (hops) return "it hops: no radio channel to set";
  return `${before}${channelWords(channel)}, fallback ${channelWords(fallback)}`;
}
