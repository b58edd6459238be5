import type { Emitter } from "../band/index.js";
import { pathLossDb } from "../propagation/index.js";
import type { RadioProfile } from "../radio/index.js";
import { emitterSignals } from "./emitter-signals.js";
import { pathObstacles } from "./path-obstacles.js";
import type { VenueReceiver } from "./venue-system.js";
import { pathModelIn } from "./venue-site.js";
import type { VenueSite } from "./venue-site.js";

const BAND_MIDDLE_MHZ = 2442;
const LEAST_DISTANCE_M = 0.1;

/**
 * The venue file's other emitters as a receiver hears them at an isotropic antenna: radiated power less path
 * loss (by the model of the receiver's room, at 2442 MHz), walls and floors. The audience is taken as not in
 * their way.
 * @param profile of the planned radio (see `emitterSignals`)
 * @see {@link venueSite}
 */
export function placedEmitters(
  site: VenueSite,
  profile: RadioProfile,
): (receiver: Pick<VenueReceiver, "at" | "room">) => Emitter[] {
  const devices = site.venue.emitters.map((device, index) => ({
    at: device.at,
    signals: emitterSignals(device, index, profile),
  }));
  return ({ at, room }) => {
    const model = pathModelIn(site, room);
    return devices.flatMap((device) => {
      const { x, y, z } = device.at;
      const distanceM = Math.max(LEAST_DISTANCE_M, Math.hypot(at.x - x, at.y - y, at.z - z));
      const { wallLossDb, floorLossDb } = pathObstacles(site, device.at, at);
      const lossDb =
        pathLossDb(model, { distanceM, frequencyMhz: BAND_MIDDLE_MHZ }) + wallLossDb + floorLossDb;
      return device.signals.map((signal) => ({ ...signal, levelDbm: signal.levelDbm - lossDb }));
    });
  };
}
