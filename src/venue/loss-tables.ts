import type { BuildLosses } from "./build-losses.js";

/** Losses of builds by incidence, quick and nearly right. */
export interface LossTables {
  /** dB at a cosine of incidence. */
  readonly lossDb: (buildIndex: number, cosineRatio: number) => number;
  /** How far it may be off, dB: twice the worst of what was found half-way between the entries. */
  readonly errorDb: number;
}

/** Entries a table; they lie evenly in asinh(tan θ), in which a loss runs straight towards grazing. */
const ENTRIES = 96;
/** Beyond this the loss is worked out itself. */
const GREATEST = Math.asinh(Math.tan((89.9 * Math.PI) / 180));
const STEP = GREATEST / (ENTRIES - 1);

/**
 * Tables of the losses of some builds, for searches that ask for very many incidences.
 * @param buildCount builds are numbered from 0
 * @example lossTables(1, () => ({ lossDb: 4, edition: "", caveats: [] })).lossDb(0, 0.3); // => 4
 */
export function lossTables(buildCount: number, lossOf: BuildLosses): LossTables {
  const at = (build: number, position: number): number =>
    lossOf(build, 1 / Math.cosh(position * STEP)).lossDb;
  let errorDb = 0;
  const tables = Array.from({ length: buildCount }, (_, build) => {
    const entries = Float64Array.from({ length: ENTRIES }, (_unused, index) => at(build, index));
    if (entries.every((lossDb) => lossDb === entries[0])) return entries;
    for (let index = 0; index < ENTRIES - 1; index += 2)
      errorDb = Math.max(errorDb, 2 * Math.abs(between(entries, index, 0.5) - at(build, index + 0.5)));
    return entries;
  });
  const lossDb = (build: number, cosineRatio: number): number => {
    const table = tables[build]!;
    // asinh(tan θ) = ln((1 + sin θ) / cos θ)
    const position =
      Math.log((1 + Math.sqrt(Math.max(0, 1 - cosineRatio * cosineRatio))) / cosineRatio) / STEP;
    if (!(position < ENTRIES - 1)) return lossOf(build, cosineRatio).lossDb;
    const index = Math.max(0, Math.floor(position));
    return between(table, index, position - index);
  };
  return { lossDb, errorDb };
}

/**
 * Cubic between two entries, through both, with the slopes that their neighbours give (Catmull and Rom); the first
 * entry, at square incidence, has itself mirrored for a neighbour: a loss is even in the angle.
 */
function between(entries: Float64Array, index: number, share: number): number {
  const from = entries[index]!;
  const to = entries[index + 1]!;
  const before = entries[index === 0 ? 1 : index - 1]!;
  const after = index + 2 < ENTRIES ? entries[index + 2]! : 2 * to - from;
  const bend = 2 * before - 5 * from + 4 * to - after + share * (3 * (from - to) + after - before);
  return from + 0.5 * share * (to - before + share * bend);
}
