import type { Emitter } from "../band/index.js";
import type { OverlapCache, TunedReceiver } from "../scorer/index.js";
import { narrowed } from "./narrowed.js";
import { onWifiChannel } from "./on-wifi-channel.js";
import { onWorstWifi } from "./on-worst-wifi.js";

/** Where the building's radios are taken to be. */
export interface RadioPlaces {
  /** Fixed, 20 MHz wide, on a Wi-Fi channel, by id. */
  readonly asked: ReadonlyMap<string, number>;
  /** Of the others, the ones that go to their worst of Wi-Fi 1, 6, 11; all of them unless given. */
  readonly movingIds?: ReadonlySet<string> | undefined;
  /** Switched off at 2.4 GHz, and guests' handsets with them. */
  readonly off?: ReadonlySet<string> | undefined;
}

/**
 * Sources with the building's radios elsewhere; the worst channel hangs on the receiver's channel, not on its gain.
 * @param building ids of the building's own
 * @param cache overlaps to reuse, all of one selectivity
 */
export function radiosMoved(
  emitters: readonly Emitter[],
  { asked, movingIds, off }: RadioPlaces,
  building: ReadonlySet<string>,
  tuned: TunedReceiver,
  cache: OverlapCache,
): readonly Emitter[] {
  const going = new Set([...(movingIds ?? building)].filter((id) => !asked.has(id)));
  const here = emitters
    .filter(({ id }) => off?.has(id) !== true)
    .map((emitter) => {
      const wifiChannel = asked.get(emitter.id);
      return wifiChannel === undefined ? emitter : onWifiChannel(narrowed(emitter), wifiChannel);
    });
  return onWorstWifi(here, going, tuned, cache);
}
