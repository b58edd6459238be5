import type { Shape } from "../band/index.js";

/** Where a figure comes from: a published standard, an assumption of this project, or the user. */
export type FigureStatus = "standard" | "assumed" | "yours";

/** One figure with its origin. */
export interface Figure<T = number> {
  readonly value: T;
  readonly status: FigureStatus;
  readonly source: string;
}

/** A channel of the DMX radio's own plan: numbers are the profile's, not Wi-Fi's. */
export interface RadioChannel {
  readonly channel: number;
  readonly centreMhz: number;
}

/** How the receiver's antenna sits in the fixture. */
export type Enclosure = "antenna-outside" | "plastic-or-glass" | "slotted-metal" | "closed-metal";

/** The figures of a wireless DMX radio: all that the scorer and the link budget need to know of it. */
export interface RadioProfile {
  readonly name: string;
  readonly title: string;
  /** True when no figure is the user's: every screen then says so. */
  readonly generic: boolean;
  readonly channels: readonly RadioChannel[];
  /** What the channel plan rests on. */
  readonly channelsOrigin: Pick<Figure, "status" | "source">;
  /** Null for a fixed channel. */
  readonly hopping: HopPlan | null;
  readonly requiredCiDb: Figure;
  readonly bandwidthMhz: Figure;
  readonly noiseFigureDb: Figure;
  readonly sensitivityDbm: Figure;
  /** Receiver: 0 dB in the passband, beyond it minus the rejection. */
  readonly selectivity: Figure<Shape>;
  /** Transmitter: what one system puts into another. */
  readonly emission: Figure<Shape>;
  readonly txPowerDbm: Figure;
  readonly txFeederLossDb: Figure;
  readonly txGainDbi: Figure;
  readonly rxGainDbi: Figure;
  readonly enclosure: Figure<Enclosure>;
  readonly enclosureLossDb: Figure;
  readonly packetMs: Figure;
  readonly transmissionsPerFrameCount: Figure;
  readonly frameRateHz: Figure;
  readonly universesPerTransmitterCount: Figure;
  /** Do receivers find a new channel by themselves, or does each need a visit? */
  readonly receiversFollow: Figure<"yes" | "no" | "unknown">;
  /** Null: unknown. */
  readonly relinkS: Figure<number | null>;
}

/** Over which frequencies a radio hops. */
export interface HopPlan {
  /** May ranges be kept out of the hop set? */
  readonly avoids: boolean;
  /** Fewest hop frequencies that must stay in use. */
  readonly leastHopCount: Figure;
}
