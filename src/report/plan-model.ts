import { printable } from "../issues/index.js";
import type { MarginField, PlanPoint, Room, SystemLinks, Venue, Wall } from "../venue/index.js";
import type { FloorPicture, SystemPlacement } from "./place-report.js";
import { letteredPlaces } from "./place-tables.js";
import { placeName } from "./place-words.js";

/** Something that stands or hangs in the room: `T`, a candidate's letter, a receiver's number. */
export interface PlanSpot {
  readonly mark: string;
  readonly at: PlanPoint;
}

/** What is drawn of one room. */
export interface PlanModel {
  readonly room: Pick<Room, "outline" | "storey">;
  /** The venue's; those of other storeys are left out. */
  readonly walls: readonly Wall[];
  /** The first ones keep their places where two meet. */
  readonly spots: readonly PlanSpot[];
  /** Margins over the floor; null: none drawn. A step no longer than `planStepM` shows all that can be shown. */
  readonly field: MarginField | null;
}

/** A spot with all that is known of it. */
export interface FloorSpot extends PlanSpot {
  readonly kind: "transmitter" | "place" | "receiver";
  readonly name: string;
  /** Of a receiver, or of the weakest from a place, dB; −Infinity in a true null; null: none to state. */
  readonly workingMarginDb: number | null;
}

/** A room's floor with what stands and hangs in it. */
export interface FloorModel extends PlanModel {
  readonly room: Room;
  readonly spots: readonly FloorSpot[];
}

/** The walls that a room's plan shows: those of its storey. */
export function wallsOfStorey({ room, walls }: Pick<PlanModel, "room" | "walls">): Wall[] {
  return walls.filter(({ storey }) => storey === room.storey);
}

/** Each room with receivers of a system: T the transmitter, the receivers by number, weakest first. */
export function linkFloors(
  { rooms, walls }: Pick<Venue, "rooms" | "walls">,
  { transmitter, receivers }: SystemLinks,
): FloorModel[] {
  const numbered = receivers.map(({ receiver, judged }, index): FloorSpot & { readonly room: string } => ({
    kind: "receiver",
    mark: String(index + 1),
    at: receiver.at,
    name: receiver.name,
    room: receiver.room,
    workingMarginDb: judged.budget.workingMarginDb,
  }));
  return rooms
    .filter(({ name }) => numbered.some((one) => one.room === name))
    .map((room) => {
      const stands: FloorSpot[] =
        transmitter?.room === room.name
          ? [
              {
                kind: "transmitter",
                mark: "T",
                at: transmitter.at,
                name: transmitter.name,
                workingMarginDb: null,
              },
            ]
          : [];
      const here = numbered.filter((one) => one.room === room.name);
      return { room, walls, spots: [...stands, ...here], field: null };
    });
}

/** One room's floor with the places for a transmitter: receivers by number, in the venue's order, and letters. */
export function placedFloor(
  walls: readonly Wall[],
  placed: SystemPlacement,
  { room, field }: FloorPicture,
): FloorModel {
  const { plan } = placed;
  const margins = placedMargins(placed);
  const receivers = plan.setting.receivers.flatMap((receiver, index): FloorSpot[] => {
    const { name, at } = receiver;
    const { workingMarginDb } = margins[index]!;
    if (receiver.room !== room.name) return [];
    return [{ kind: "receiver", mark: String(index + 1), at, name, workingMarginDb }];
  });
  const pair = plan.pair?.places ?? [];
  const named = [
    ...letteredPlaces(placed).map(({ letter, one }) => ({
      mark: letter,
      place: one.place,
      name: placeName(one),
      workingMarginDb: one.leastMarginDb,
    })),
    ...pair.map((place, index) => ({
      mark: "PQ"[index]!,
      place,
      name: "one of two",
      workingMarginDb: plan.pair!.leastMarginDb,
    })),
  ];
  const places = named.flatMap(({ place, ...spot }): FloorSpot[] => {
    const kind = spot.mark === "T" ? "transmitter" : "place";
    return place.room === room.name ? [{ kind, at: place.at, ...spot }] : [];
  });
  return { room, walls, spots: [...receivers, ...places], field };
}

/** The receivers of a placement, in the venue's order, with what each has to spare from the place chosen. */
export function placedMargins({ plan }: SystemPlacement): {
  readonly name: string;
  /** dB; null where no place was chosen. */
  readonly workingMarginDb: number | null;
}[] {
  const margins = plan.choice?.margins ?? [];
  return plan.setting.receivers.map(({ name }) => ({
    name,
    workingMarginDb: margins.find(({ receiver }) => receiver === name)?.workingMarginDb ?? null,
  }));
}

/** A room's name for a title. */
export function floorTitle({ name }: Pick<Room, "name">): string {
  return `${printable(name, 30)} from above`;
}
