import type { Shape } from "./shape.js";

/** One physical transmitter as the scorer sees it, whatever number of network names it announces. */
export interface Emitter {
  /** The lowest BSSID, `bssid@channel`, `name@channel`, or a name of the caller's. */
  readonly id: string;
  readonly centreMhz: number;
  /** Transmit spectrum; its total power counts as one, so only its form matters. */
  readonly shape: Shape;
  /** Received power as scanned, dBm, at an isotropic antenna. */
  readonly levelDbm: number;
  /** Share of time on the air, 0..1. */
  readonly airtimeRatio: number;
  readonly airtimeAssumed: boolean;
  /** Primary Wi-Fi channel: emitters of one take turns. Null: independent of everything else. */
  readonly contentionChannel: number | null;
}
