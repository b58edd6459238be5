import { distanceToOutlineM, isInsideOutline } from "../plan-polygon.js";
import type { PlanPoint, Room, Storey } from "../venue-room.js";
import type { Entry } from "./field-list.js";
import type { FileSpot } from "./file-spot.js";
import { isMapping } from "./file-spot.js";
import { nearHint, someOf } from "./near-hint.js";

/** Names that the file gives to things, whether the things are sound or not: a reference to one is no mistake. */
export interface FileNames {
  readonly storeys: readonly string[];
  readonly rooms: readonly string[];
  readonly systems: readonly string[];
  readonly receivers: readonly string[];
}

/** What the file has told so far, for what refers to it. */
export interface VenueScope {
  readonly names: FileNames;
  readonly storeys: readonly Storey[];
  readonly rooms: ReadonlyMap<string, Room>;
}

/** The names under a key of the raw file. */
export function namesIn(data: unknown, key: string): string[] {
  const items: unknown = isMapping(data) ? data[key] : undefined;
  if (!Array.isArray(items)) return [];
  return items.flatMap((item: unknown) => {
    const name = isMapping(item) ? item["name"] : undefined;
    return typeof name === "string" || typeof name === "number" ? [String(name).trim()] : [];
  });
}

/** Is it a name of the file's? If not, the nearest is suggested. */
export function isKnown(name: string, names: readonly string[], kind: string, spot: FileSpot): boolean {
  if (names.includes(name)) return true;
  const expected =
    names.length === 0
      ? `no name: the file has no ${kind}s of its own`
      : `a ${kind} of this file: ${someOf(names)}${nearHint(name, names)}`;
  spot.error(name, expected, "contradiction");
  return false;
}

/** Tells of every name that stands twice. */
export function toldTwice(entries: readonly Entry<{ readonly name: string }>[], kind: string): void {
  const seen = new Set<string>();
  for (const { value, spot } of entries) {
    if (seen.has(value.name))
      spot.key("name").error(value.name, `a name of its own for each ${kind}`, "contradiction");
    seen.add(value.name);
  }
}

/** The storey by name; without one the only storey. */
export function storeyOf(
  name: string | null,
  spot: FileSpot,
  { names, storeys }: VenueScope,
): Storey | undefined {
  if (name === null) {
    if (storeys.length === 1) return storeys[0];
    const expected = `the storey, as there are several: ${someOf(names.storeys)}`;
    return spot.key("storey").error(undefined, expected, "missing-cell");
  }
  const known = names.storeys.length === 0 ? storeys.map((storey) => storey.name) : names.storeys;
  if (!isKnown(name, known, "storey", spot.key("storey"))) return undefined;
  return storeys.find((storey) => storey.name === name);
}

/** Height of a room's floor above the lowest storey's, m. */
export function floorOfM(room: Room, { storeys }: VenueScope): number {
  return storeys.find(({ name }) => name === room.storey)?.floorM ?? 0;
}

/** What is fixed to a wall counts as within it. */
const WALL_THICKNESS_M = 0.6;

/** Does a room hold a point of the plan? What is fixed to its walls counts. */
export function holds({ outline }: Room, point: PlanPoint): boolean {
  return isInsideOutline(outline, point) || distanceToOutlineM(outline, point) <= WALL_THICKNESS_M / 2;
}
