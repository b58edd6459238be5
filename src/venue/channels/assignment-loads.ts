import { dbToRatio } from "../../units/index.js";
import type { AssignmentProblem } from "./assignment-problem.js";
import { pairTables } from "./overlap-table.js";
import type { OverlapTable } from "./overlap-table.js";
import { rowsOfSystems } from "./rows-of-systems.js";
import { withoutDominated } from "./without-dominated.js";

/**
 * The problem with every row's power divided by what it can bear at a value of 0 dB, so that one number is one value
 * for all of them: `value = −10·log10(load ratio)`; the load of a system is the greatest of its rows', the least value
 * that of the greatest load. A cap is a load that is there anyway ({@link AssignmentLoads.floorRatios}). Rows are
 * those that can be a system's greatest: its own side by side.
 */
export interface AssignmentLoads {
  readonly systemCount: number;
  /** [system] */
  readonly channelCounts: Int32Array;
  /** [system] where its channels begin in arrays over all channels of all systems ("slots"). */
  readonly starts: Int32Array;
  /** [system] its first row; one more at the end. */
  readonly rowStarts: Int32Array;
  /** [row] where its channels begin in arrays over all channels of all rows. */
  readonly rowSlots: Int32Array;
  /** [row's channel] load from outside. */
  readonly baseRatios: Float64Array;
  /** [slot] the greatest load from outside of the system's rows. */
  readonly peakBaseRatios: Float64Array;
  /** [slot] 1 where the channel may be used. */
  readonly usable: Uint8Array;
  /** [system] */
  readonly floorRatios: Float64Array;
  /** [row · systemCount + other] load at full overlap. */
  readonly gainRatios: Float64Array;
  /** [receiving system · systemCount + other] the greatest load at full overlap of the system's rows. */
  readonly peakGainRatios: Float64Array;
  /** As peakGainRatios. */
  readonly tables: readonly OverlapTable[];
}

/** @returns the loads of a problem that has been checked */
export function assignmentLoads(problem: AssignmentProblem): AssignmentLoads {
  const bearableMw = problem.wantedDbm.map((wanted, row) =>
    dbToRatio(wanted - problem.requiredCiDb[row]! - (problem.allowanceDb?.[row] ?? 0)),
  );
  const systems = rowsOfSystems(problem);
  const kept = systems.map((rows, r) =>
    withoutDominated(
      rows.map((row) => ({
        baseRatios: problem.baseMw[row]!.map((powerMw) => powerMw / bearableMw[row]!),
        gainRatios: problem.couplingMw[row]!.map((powerMw, o) => (o === r ? 0 : powerMw / bearableMw[row]!)),
      })),
    ),
  );
  const channelCounts = Int32Array.from(kept, ([row]) => row!.baseRatios.length);
  const peaks = (of: (row: (typeof kept)[number][number]) => readonly number[]): Float64Array =>
    Float64Array.from(
      kept.flatMap((rows) => of(rows[0]!).map((_, k) => Math.max(...rows.map((row) => of(row)[k]!)))),
    );
  return {
    systemCount: systems.length,
    channelCounts,
    starts: startsOf(channelCounts).subarray(0, systems.length),
    rowStarts: startsOf(kept.map((rows) => rows.length)),
    rowSlots: startsOf(kept.flatMap((rows) => rows.map((row) => row.baseRatios.length))),
    baseRatios: Float64Array.from(kept.flat().flatMap((row) => row.baseRatios)),
    peakBaseRatios: peaks((row) => row.baseRatios),
    usable: usableSlots(problem, channelCounts),
    floorRatios: Float64Array.from(systems, (rows) => Math.max(...rows.map((row) => floorOf(problem, row)))),
    gainRatios: Float64Array.from(kept.flat().flatMap((row) => row.gainRatios)),
    peakGainRatios: peaks((row) => row.gainRatios),
    tables: pairTables(problem, channelCounts),
  };
}

/** [index] the sum of the counts before it, and of all of them at the end. */
function startsOf(counts: ArrayLike<number>): Int32Array {
  const starts = new Int32Array(counts.length + 1);
  for (let k = 0; k < counts.length; k++) starts[k + 1] = starts[k]! + counts[k]!;
  return starts;
}

function floorOf({ allowanceDb, capDb }: AssignmentProblem, row: number): number {
  return dbToRatio((allowanceDb?.[row] ?? 0) - (capDb?.[row] ?? Infinity));
}

function usableSlots(problem: AssignmentProblem, channelCounts: Int32Array): Uint8Array {
  const { allowedChannels, fixedChannels } = problem;
  const mayUse = (r: number, c: number): boolean =>
    (allowedChannels?.[r]?.includes(c) ?? true) && (fixedChannels?.[r] ?? c) === c;
  return Uint8Array.from(
    Array.from(channelCounts).flatMap((count, r) =>
      Array.from({ length: count }, (_, c) => (mayUse(r, c) ? 1 : 0)),
    ),
  );
}

/** @returns [row] the load of each at an assignment */
export function rowLoadsOf(loads: AssignmentLoads, channels: ArrayLike<number>): Float64Array {
  const { systemCount, rowStarts, rowSlots, baseRatios, gainRatios, tables } = loads;
  const result = new Float64Array(rowStarts[systemCount]!);
  for (let r = 0; r < systemCount; r++) {
    const channel = channels[r]!;
    for (let row = rowStarts[r]!; row < rowStarts[r + 1]!; row++) {
      let load = baseRatios[rowSlots[row]! + channel]!;
      for (let o = 0; o < systemCount; o++) {
        const gain = gainRatios[row * systemCount + o]!;
        if (gain === 0) continue;
        const { columnCount, shareRatios } = tables[r * systemCount + o]!;
        load += gain * shareRatios[channel * columnCount + channels[o]!]!;
      }
      result[row] = load;
    }
  }
  return result;
}

/** @returns [system] the greatest of its rows' loads, never below its floor */
export function greatestByRow(
  { floorRatios, rowStarts }: AssignmentLoads,
  rowRatios: Float64Array,
): Float64Array {
  return floorRatios.map((floor, r) => {
    let most = floor;
    for (let row = rowStarts[r]!; row < rowStarts[r + 1]!; row++) most = Math.max(most, rowRatios[row]!);
    return most;
  });
}

/** @returns [system] the load of each at an assignment, never below its floor */
export function loadsOf(loads: AssignmentLoads, channels: ArrayLike<number>): Float64Array {
  return greatestByRow(loads, rowLoadsOf(loads, channels));
}
