import type {
  CircuitSheet,
  HangSheet,
  InstallChannel,
  InstallCircuit,
  InstallTerms,
} from "../install/index.js";
import type { AddressRow } from "../patch/index.js";
import type { Luminaire } from "./venue-luminaire.js";
import type { Venue } from "./venue.js";
import type { VenueSystem } from "./venue-system.js";

/** Radio channels of a system that somebody has chosen; left out: the venue file's, or none. */
export interface ChosenChannels {
  readonly system: string;
  readonly channel?: number;
  readonly fallbackChannel?: number;
}

/** What the checks of install day are derived from. */
export interface InstallParts {
  /** In the order of hanging. */
  readonly luminaires: readonly Luminaire[];
  readonly addresses: readonly AddressRow[];
  readonly hang: HangSheet;
  readonly circuits: CircuitSheet;
  readonly chosen: readonly ChosenChannels[];
}

function circuitTerms({ circuit, control, luminaires }: CircuitSheet["rows"][number]): InstallCircuit {
  return { circuit, control, luminaires };
}

/** A venue's install day: its systems with their channels, receivers, luminaires with their addresses, circuits. */
export function venueInstallTerms(
  { systems, receivers }: Pick<Venue, "systems" | "receivers">,
  { luminaires, addresses, hang, circuits, chosen }: InstallParts,
): InstallTerms {
  const addressOf = new Map(addresses.map((row) => [row.name, row]));
  const trimOf = new Map(hang.rows.map(({ name, trimHeightM }) => [name, trimHeightM]));
  return {
    systems: systems.map((system) =>
      installSystem(
        system,
        chosen.find((one) => one.system === system.name),
      ),
    ),
    receivers: receivers.map(({ name, system, luminaires: served }) => ({
      ...{ name, system, luminaires: served, predictedDbm: null },
    })),
    luminaires: luminaires.map(({ name, room, mode, footprintSlotCount, emergency, onLinkLoss }) => {
      const row = addressOf.get(name);
      return {
        ...{ name, room, mode, emergency, onLinkLoss },
        universe: row?.universe ?? null,
        address: row?.address ?? null,
        footprintSlotCount: row?.footprintSlotCount ?? footprintSlotCount,
        trimHeightM: trimOf.get(name) ?? null,
      };
    }),
    circuits: circuits.rows.map(circuitTerms),
    doNotHang: hang.doNotHang,
  };
}

function installSystem(
  { name, profile, channel }: VenueSystem,
  picked: ChosenChannels | undefined,
): InstallTerms["systems"][number] {
  const { channels, hopping, receiversFollow, relinkS } = profile;
  const numbered = (number: number | null | undefined): InstallChannel | null =>
    channels.find((one) => hopping === null && one.channel === number) ?? null;
  return {
    name,
    channel: numbered(picked?.channel ?? channel),
    fallback: numbered(picked?.fallbackChannel),
    hops: hopping !== null,
    receiversFollow: receiversFollow.value,
    relinkS: relinkS.value,
  };
}
