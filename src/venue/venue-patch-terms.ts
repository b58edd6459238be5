import { LAST_UNIVERSE, orderOfHanging } from "../patch/index.js";
import type { PatchTerms } from "../patch/index.js";
import type { ModeUse } from "./mode-uses.js";
import type { Venue } from "./venue.js";

/**
 * A venue's luminaires and systems as a patch takes them, in the order of hanging. A receiver that a luminaire has
 * for itself counts as none; a system carries as many universes as its radio does.
 * @param modes footprints for luminaires that state none
 * @see {@link planPatch}
 */
export function venuePatchTerms(
  { luminaires, receivers, systems }: Pick<Venue, "luminaires" | "receivers" | "systems">,
  modes: readonly ModeUse[],
): PatchTerms {
  const sharedBy = new Map(
    receivers.flatMap(({ name, luminaires: served }) =>
      served.map((luminaire) => [luminaire, name] as const),
    ),
  );
  const listed = luminaires.map(
    ({ name, room, group, system, receiver, mode, footprintSlotCount, universe, address }) => {
      const serving = sharedBy.get(name) ?? receiver;
      const shared = serving === name ? null : serving;
      return { name, room, group, system, receiver: shared, mode, footprintSlotCount, universe, address };
    },
  );
  const terms: PatchTerms = {
    luminaires: listed,
    systems: systems.map(({ name, universe, profile }) => ({
      name,
      universe,
      universeCount: Math.min(profile.universesPerTransmitterCount.value, LAST_UNIVERSE + 1 - universe),
    })),
    modes: modes.flatMap(({ mode, footprintSlotCount }) =>
      footprintSlotCount === null ? [] : { mode, footprintSlotCount },
    ),
  };
  return { ...terms, luminaires: orderOfHanging(terms).map((index) => listed[index]!) };
}
