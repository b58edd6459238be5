import type { HangPlace } from "./hang-place.js";
import { suspensionLengthM, trimErrorM } from "./hang-row.js";
import type { HangLevel } from "./hang-sheet-types.js";
import type { LevelStepsOptions } from "./level-steps.js";
import { levelSteps } from "./level-steps.js";
import { unevenOffsetsM } from "./uneven-offsets.js";

/** Steps and evenness of every place, and the rows that hang to one trim. */
export interface LevelledPlaces {
  /** By place, in the order of `places`. */
  readonly stepCounts: readonly (number | null)[];
  readonly unevenM: readonly (number | null)[];
  readonly levels: readonly HangLevel[];
}

/** Brings each row to one level: a row is one room, group and trim. */
export function levelPlaces(
  places: readonly HangPlace[],
  options: LevelStepsOptions & { readonly eyeToleranceM: number },
): LevelledPlaces {
  const stepCounts = places.map((): number | null => null);
  const unevenM = places.map((): number | null => null);
  const levels: HangLevel[] = [];
  const hung = places.flatMap(({ gap }, index) => (gap === null ? [index] : []));
  for (const indexes of grouped(hung, (index) => rowKey(places[index]!))) {
    for (const alike of grouped(indexes, (index) => `${places[index]!.figures.stepM}`))
      setSteps(alike, places, stepCounts, options);
    const heightsM = indexes.map((index) => heightM(places[index]!, stepCounts[index]!));
    const offsetsM = unevenOffsetsM(heightsM, options.eyeToleranceM);
    indexes.forEach((index, at) => (unevenM[index] = offsetsM[at]!));
    levels.push(levelOf(indexes, places, heightsM, offsetsM));
  }
  return { stepCounts, unevenM, levels };
}

function setSteps(
  indexes: readonly number[],
  places: readonly HangPlace[],
  stepCounts: (number | null)[],
  options: LevelStepsOptions,
): void {
  const { stepM } = places[indexes[0]!]!.figures;
  if (stepM === null) return;
  const dropsM = indexes.map((index) => Math.max(0, places[index]!.dropM!));
  levelSteps(dropsM, stepM, options).forEach((stepCount, at) => (stepCounts[indexes[at]!] = stepCount));
}

/** Above its trim. */
function heightM(place: HangPlace, stepCount: number | null): number {
  return trimErrorM(place, suspensionLengthM(place, stepCount))!;
}

function levelOf(
  indexes: readonly number[],
  places: readonly HangPlace[],
  heightsM: readonly number[],
  offsetsM: readonly number[],
): HangLevel {
  const first = places[indexes[0]!]!;
  const names = indexes.map((index) => places[index]!.point.name);
  return {
    room: first.point.room,
    group: first.point.group ?? null,
    trimHeightM: first.trimHeightM!,
    names,
    spreadM: heightsM.reduce((a, b) => Math.max(a, b)) - heightsM.reduce((a, b) => Math.min(a, b)),
    uneven: names.filter((_, at) => offsetsM[at] !== 0),
  };
}

/** Heights that differ by less than a micrometre are one trim, in whatever unit they were typed. */
function rowKey({ point, trimHeightM }: HangPlace): string {
  return JSON.stringify([point.room, point.group ?? null, Math.round(trimHeightM! * 1e6)]);
}

function grouped(indexes: readonly number[], keyOf: (index: number) => string): number[][] {
  const groups = new Map<string, number[]>();
  for (const index of indexes) {
    const key = keyOf(index);
    groups.set(key, [...(groups.get(key) ?? []), index]);
  }
  return [...groups.values()];
}
