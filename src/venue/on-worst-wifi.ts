import type { Emitter, Shape } from "../band/index.js";
import { inChannelDbm } from "../scorer/index.js";
import type { OverlapCache, TunedReceiver } from "../scorer/index.js";
import { SLACK } from "../units/index.js";
import { canMove, isWide, MOVE_WIFI_CHANNELS, onWifiChannel } from "./on-wifi-channel.js";

/**
 * Sources with some of them moved, all at once, each to the one of Wi-Fi 1, 6, 11 at which it puts the most
 * power into a receiver's channel; of equals (1e-9 dB) the lowest. What isn't Wi-Fi stays where it is.
 * @param movingIds ids of the sources that move
 * @param cache overlaps to reuse, all of one selectivity
 * @returns one for each emitter, in the same order
 * @see {@link planChannel}
 */
export function onWorstWifi(
  emitters: readonly Emitter[],
  movingIds: ReadonlySet<string>,
  receiver: TunedReceiver,
  cache: OverlapCache = new Map(),
): Emitter[] {
  const worst = worstChannel(receiver, cache);
  return emitters.map((emitter) =>
    movingIds.has(emitter.id) && canMove(emitter) ? onWifiChannel(emitter, worst(emitter)) : emitter,
  );
}

/** The worst channel hangs on a source's spectrum and width alone, so it is sought once for each. */
function worstChannel(receiver: TunedReceiver, cache: OverlapCache): (emitter: Emitter) => number {
  const narrow = new Map<Shape, number>();
  const wide = new Map<Shape, number>();
  return (emitter) => {
    const known = isWide(emitter) ? wide : narrow;
    let channel = known.get(emitter.shape);
    if (channel === undefined) known.set(emitter.shape, (channel = strongestOf(emitter, receiver, cache)));
    return channel;
  };
}

function strongestOf(emitter: Emitter, receiver: TunedReceiver, cache: OverlapCache): number {
  let strongestDbm = -Infinity;
  let strongestChannel = MOVE_WIFI_CHANNELS[0]!;
  for (const channel of MOVE_WIFI_CHANNELS) {
    const levelDbm = inChannelDbm(onWifiChannel(emitter, channel), receiver, cache);
    if (levelDbm <= strongestDbm + SLACK) continue;
    strongestDbm = levelDbm;
    strongestChannel = channel;
  }
  return strongestChannel;
}
