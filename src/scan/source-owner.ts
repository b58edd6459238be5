import { SLACK } from "../units/index.js";
import type { Owner, SurveyEmitter } from "./survey.js";

/** Sources that the user knows, by name or address. */
export interface OwnerMarks {
  readonly building: readonly string[];
  readonly neighbour: readonly string[];
}

/** A source's owner, and whether the user said so. */
export interface SourceOwner {
  readonly owner: Owner;
  /** False: presumed from the level. */
  readonly ownerMarked: boolean;
}

/**
 * Whose a source is: as marked, an address before a name; else the building's from a level up. A source that
 * is marked as both counts as not marked (see `isMarkedAsBoth`).
 * @param ownFromDbm presumed to be the building's from here, dBm, compared with a slack of 1e-9
 * @example sourceOwner({ names: ["Hall"], bssids: [], levelDbm: -60 }, { building: [], neighbour: ["Hall"] }, -75).owner; // => "neighbour"
 */
export function sourceOwner(
  source: Pick<SurveyEmitter, "names" | "bssids" | "levelDbm">,
  marks: OwnerMarks,
  ownFromDbm: number,
): SourceOwner {
  const owner = markedOwner(source, marks);
  if (owner === "building" || owner === "neighbour") return { owner, ownerMarked: true };
  return { owner: source.levelDbm >= ownFromDbm - SLACK ? "building" : "neighbour", ownerMarked: false };
}

/** Do two marks of one kind contradict each other on a source? */
export function isMarkedAsBoth(source: Pick<SurveyEmitter, "names" | "bssids">, marks: OwnerMarks): boolean {
  return markedOwner(source, marks) === "both";
}

/** Does a mark name the source? */
export function isNamedBy({ names, bssids }: Pick<SurveyEmitter, "names" | "bssids">, mark: string): boolean {
  return names.includes(mark) || bssids.includes(addressOf(mark));
}

type Marked = Owner | "both" | null;

function markedOwner(source: Pick<SurveyEmitter, "names" | "bssids">, marks: OwnerMarks): Marked {
  const byAddress = ownerBy((mark) => source.bssids.includes(addressOf(mark)), marks);
  return byAddress ?? ownerBy((mark) => source.names.includes(mark), marks);
}

function ownerBy(names: (mark: string) => boolean, { building, neighbour }: OwnerMarks): Marked {
  const [own, other] = [building.some(names), neighbour.some(names)];
  if (own && other) return "both";
  return own ? "building" : other ? "neighbour" : null;
}

function addressOf(mark: string): string {
  return mark.toLowerCase().replaceAll("-", ":");
}
