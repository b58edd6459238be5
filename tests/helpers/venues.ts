import { findProfile } from "../../src/radio/index.js";
import type { Antenna } from "../../src/propagation/index.js";
import { referenceCrowd } from "../../src/venue/index.js";
import type {
  Place,
  PlanPoint,
  Room,
  TransmitterPlace,
  Venue,
  VenueReceiver,
  VenueSystem,
  Wall,
  WallBuild,
} from "../../src/venue/index.js";

/** A rectangle's corners. */
export function rectangle(fromX: number, fromY: number, toX: number, toY: number): PlanPoint[] {
  return [
    { x: fromX, y: fromY },
    { x: toX, y: fromY },
    { x: toX, y: toY },
    { x: fromX, y: toY },
  ];
}

export function room(name: string, outline: readonly PlanPoint[], more: Partial<Room> = {}): Room {
  return {
    name,
    storey: "ground",
    outline,
    heightM: 8,
    pathModel: null,
    places: [name],
    people: { empty: 0, part: 0, full: 0 },
    seating: null,
    handsetHeightM: 1.2,
    trimHeightM: null,
    laserLineM: null,
    ...more,
  };
}

export function wall(from: PlanPoint, to: PlanPoint, build: WallBuild, more: Partial<Wall> = {}): Wall {
  return { name: "wall", storey: "ground", from, to, bottomM: 0, topM: null, build, openings: [], ...more };
}

export function transmitter(at: Place, more: Partial<TransmitterPlace> = {}): TransmitterPlace {
  return {
    name: "booth",
    at,
    heightM: at.z,
    room: "hall",
    antenna: null,
    inRack: null,
    inSight: null,
    ...more,
  };
}

export function receiver(name: string, at: Place, more: Partial<VenueReceiver> = {}): VenueReceiver {
  return {
    name,
    system: "A",
    room: "hall",
    at,
    heightM: at.z,
    antenna: null,
    enclosure: null,
    luminaires: [],
    ...more,
  };
}

export function system(more: Partial<VenueSystem> = {}): VenueSystem {
  return {
    name: "A",
    rooms: ["hall"],
    profile: findProfile("raster-13"),
    transmitter: null,
    candidates: [],
    channel: 6,
    allowedChannels: null,
    universe: 1,
    ...more,
  };
}

export function venue(more: Partial<Venue> = {}): Venue {
  return {
    name: "Ropewalk",
    units: "m",
    region: null,
    date: null,
    eventMinutes: 90,
    building: "commercial",
    allEquipmentListed: false,
    storeys: [{ name: "ground", floorM: 0, floorLossDb: null }],
    rooms: [room("hall", rectangle(0, 0, 20, 12))],
    walls: [],
    systems: [system()],
    receivers: [],
    luminaires: [],
    hang: {},
    circuits: [],
    emitters: [],
    scans: [],
    sources: [],
    crowd: referenceCrowd,
    ...more,
  };
}

const UPRIGHT: Antenna = { kind: "dipole" };

/** An upright half-wave dipole. */
export function dipole(): Antenna {
  return UPRIGHT;
}
