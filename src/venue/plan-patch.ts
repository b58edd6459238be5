import { emergencyNotice } from "../install/index.js";
import type { EmergencyNotice } from "../install/index.js";
import { allocateAddresses, LAST_UNIVERSE, patchLabels } from "../patch/index.js";
import type {
  AddressPlan,
  LabelChannel,
  ModeFootprint,
  PatchLabel,
  PatchOrder,
  PatchOverflow,
  ReservedSlots,
} from "../patch/index.js";
import { transmitAirtimeRatio } from "../radio/index.js";
import { modeUses } from "./mode-uses.js";
import type { ModeUse } from "./mode-uses.js";
import { patchRefresh } from "./patch-refresh.js";
import type { PatchRefresh } from "./patch-refresh.js";
import type { Venue } from "./venue.js";
import type { ChosenChannels } from "./venue-install-terms.js";
import { venuePatchTerms } from "./venue-patch-terms.js";
import type { VenueSystem } from "./venue-system.js";

/** How a venue is to be patched. */
export interface PlanPatchOptions {
  /** `hanging` unless given. */
  readonly order?: PatchOrder;
  /** Slots kept free behind each group; 0 unless given. */
  readonly spareSlotCount?: number;
  /** Start addresses are 1, 1 + this, 1 + 2 · this …; 1 unless given. */
  readonly alignSlotCount?: number;
  readonly reserved?: readonly ReservedSlots[];
  /** Footprints of modes that somebody looked up; else those that the luminaires agree on. */
  readonly modes?: readonly ModeFootprint[];
  /** Radio channels that a plan chose, for the labels; else those that the venue settles. */
  readonly channels?: readonly ChosenChannels[];
}

/** A system on the address sheet. */
export interface PatchedSystem {
  readonly name: string;
  /** The first that it carries. */
  readonly universe: number;
  readonly universeCount: number;
  /** Null: not placed yet. */
  readonly transmitter: string | null;
  readonly profile: string;
  /** It hops: there is no channel to set. */
  readonly hops: boolean;
  /** The radio channel that a plan chose or the venue settles. */
  readonly channel: LabelChannel | null;
  /** Share of time that its transmitter is on the air. */
  readonly airtimeRatio: number;
  readonly frameRateHz: number;
  readonly frameRateAssumed: boolean;
}

/** What luminaires cost that a system has no room for: further systems, each on a radio channel of its own. */
export interface OverflowCost extends PatchOverflow {
  /** Share of time that one more transmitter of the kind is on the air. */
  readonly airtimeRatio: number;
  /** A universe for the further systems, behind all that are carried or used; null: none is left. */
  readonly firstFurtherUniverse: number | null;
}

/** A venue's addresses, with all that its sheets and labels say of them. */
export interface PatchPlan {
  readonly options: Required<Omit<PlanPatchOptions, "modes" | "channels">>;
  /** Its rows are in the order of hanging. */
  readonly addresses: AddressPlan;
  /** One for each row. */
  readonly labels: readonly PatchLabel[];
  readonly systems: readonly PatchedSystem[];
  readonly modes: readonly ModeUse[];
  readonly overflows: readonly OverflowCost[];
  readonly refresh: PatchRefresh;
  readonly emergency: EmergencyNotice;
}

/**
 * Addresses for a venue's luminaires: settled ones stay, the rest follow in the order of hanging or fill the
 * fewest universes.
 * @throws {ArgumentError} as `allocateAddresses`
 * @example const { venue } = readVenue({ name: "Mill", units: "m",
 *   rooms: [{ name: "mill", outline: [[0, 0], [12, 0], [12, 8], [0, 8]], height: 6 }],
 *   systems: [{ name: "mill", rooms: ["mill"], profile: "raster-13", universe: 1 }],
 *   luminaires: [{ name: "L1", room: "mill", x: 10, y: 6, trim_height: 4, footprint: 8 }] }, { source: "venue.yaml" });
 * const plan = planPatch(venue);
 * plan.addresses.rows[0].address; // => 1
 * narrowPatch(plan, { room: "mill" }).addresses.rows.length; // => 1
 * patchRefresh(plan.addresses.universes).universes.length; // => 1
 * modeUses(venue.luminaires); // => []
 * venuePatchTerms(venue, []).luminaires.length; // => 1
 * const sheets = planHang(venue);
 * narrowHang(sheets, venue, { room: "mill" }).hang.rows.length; // => 1
 */
export function planPatch(venue: Venue, options: PlanPatchOptions = {}): PatchPlan {
  const { order = "hanging", spareSlotCount = 0, alignSlotCount = 1, reserved = [] } = options;
  const asked = { order, spareSlotCount, alignSlotCount, reserved };
  const modes = modeUses(venue.luminaires, options.modes);
  const addresses = allocateAddresses({ ...venuePatchTerms(venue, modes), ...asked });
  const chosen = new Map(options.channels?.map((each) => [each.system, each]));
  const systems = venue.systems.map((system) => patchedSystem(system, chosen.get(system.name)));
  const channels = venue.systems.map((system, index) => ({
    system: system.name,
    channel: systems[index]!.channel,
    fallback: labelChannel(system, chosen.get(system.name)?.fallbackChannel),
  }));
  return {
    options: asked,
    addresses,
    labels: patchLabels(addresses.rows, channels),
    systems,
    modes,
    overflows: overflowCosts(addresses, systems),
    refresh: patchRefresh(addresses.universes),
    emergency: emergencyNotice(venue.luminaires),
  };
}

function labelChannel({ profile }: VenueSystem, number: number | null | undefined): LabelChannel | null {
  const { hopping, channels } = profile;
  return channels.find((one) => hopping === null && one.channel === number) ?? null;
}

function patchedSystem(system: VenueSystem, chosen: ChosenChannels | undefined): PatchedSystem {
  const { name, universe, profile, transmitter } = system;
  const { hopping, frameRateHz, universesPerTransmitterCount: carried } = profile;
  return {
    name,
    universe,
    universeCount: Math.min(carried.value, LAST_UNIVERSE + 1 - universe),
    transmitter: transmitter?.name ?? null,
    profile: profile.name,
    hops: hopping !== null,
    channel: labelChannel(system, chosen?.channel ?? system.channel),
    airtimeRatio: Math.min(1, transmitAirtimeRatio(profile)),
    frameRateHz: frameRateHz.value,
    frameRateAssumed: frameRateHz.status === "assumed",
  };
}

function overflowCosts(
  { overflows, universes }: AddressPlan,
  systems: readonly PatchedSystem[],
): OverflowCost[] {
  let next = Math.max(
    ...systems.map(({ universe, universeCount }) => universe + universeCount),
    ...universes.map(({ universe }) => universe + 1),
  );
  return overflows.map((overflow) => {
    const { airtimeRatio } = systems.find(({ name }) => name === overflow.system)!;
    const first = next;
    next += overflow.furtherUniverseCount;
    const firstFurtherUniverse = next - 1 <= LAST_UNIVERSE ? first : null;
    return { ...overflow, airtimeRatio, firstFurtherUniverse };
  });
}
