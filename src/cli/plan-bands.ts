import type { RadioProfile } from "../radio/index.js";
import type { RoomBand, RoomsReport, VenueLinkReport } from "../report/index.js";
import { receiverOf } from "../scorer/index.js";
import { channelsInBand, receiverBand, systemsOnAir } from "../venue/index.js";
import type { ReceiverLink } from "../venue/index.js";
import { BAND_GRID } from "./band-grid.js";
import type { VenueJob } from "./venue-options.js";
import type { VenueScene } from "./venue-scene.js";

/** The band in every room with receivers, at the weakest of each system there, the other systems on the air. */
export function planBands(
  { crowd, terms }: VenueJob,
  scenes: ReadonlyMap<string, VenueScene>,
  { plan }: RoomsReport,
  { systems }: VenueLinkReport,
): RoomBand[] {
  return systems.flatMap(({ system, receivers }) => {
    const scene = scenes.get(system.name)!;
    const site = scene.siteWith(crowd);
    const planned = plan.systems.find((one) => one.system.name === system.name);
    const air = {
      ...terms,
      survey: scene.roomsWith(crowd),
      ...(planned !== undefined && { further: systemsOnAir(site, planned, plan.systems) }),
      grid: BAND_GRID,
    };
    const channels = [...channelsInBand(site, system)].sort((a, b) => a.centreMhz - b.centreMhz);
    return weakestByRoom(receivers).map((link) => ({
      room: link.receiver.room,
      system: system.name,
      receiver: link.receiver.name,
      band: receiverBand(site, system.profile, link.receiver, air),
      channels: channels.map(({ channel, centreMhz }) => ({ channel, centreMhz })),
      channel: planned?.channel ?? null,
      fallbackChannel: planned?.fallback.channel ?? null,
      spoiltAboveNoiseDb: spoiltAboveNoiseDb(link, system.profile),
    }));
  });
}

/** Receivers come weakest first. */
function weakestByRoom(receivers: readonly ReceiverLink[]): ReceiverLink[] {
  return receivers.filter(
    ({ receiver }, index) => receivers.findIndex((one) => one.receiver.room === receiver.room) === index,
  );
}

/** What the wanted signal less the C/I that it needs stands above the receiver's noise; null: there is none. */
function spoiltAboveNoiseDb({ judged }: ReceiverLink, profile: RadioProfile): number | null {
  const { receivedDbm } = judged.budget;
  if (receivedDbm === -Infinity) return null;
  return receivedDbm - profile.requiredCiDb.value - receiverOf(profile).noiseFloorDbm;
}
