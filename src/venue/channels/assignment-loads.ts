import { dbToRatio } from "../../units/index.js";
import type { AssignmentProblem } from "./assignment-problem.js";
import { overlapTable } from "./overlap-table.js";
import type { OverlapTable } from "./overlap-table.js";

/**
 * The problem with every system's power divided by what it can bear at a value of 0 dB, so that one number is one
 * value for all of them: `value = −10·log10(load ratio)`, the least value is that of the greatest load. A cap is a
 * load that is there anyway ({@link AssignmentLoads.floorRatios}).
 */
export interface AssignmentLoads {
  readonly systemCount: number;
  /** [system] */
  readonly channelCounts: Int32Array;
  /** [system] where its channels begin in arrays over all channels of all systems ("slots"). */
  readonly starts: Int32Array;
  /** [slot] load from outside. */
  readonly baseRatios: Float64Array;
  /** [slot] 1 where the channel may be used. */
  readonly usable: Uint8Array;
  /** [system] */
  readonly floorRatios: Float64Array;
  /** [receiving system · systemCount + other] load at full overlap. */
  readonly gainRatios: Float64Array;
  /** As gainRatios. */
  readonly tables: readonly OverlapTable[];
}

/** @returns the loads of a problem that has been checked */
export function assignmentLoads(problem: AssignmentProblem): AssignmentLoads {
  const { wantedDbm, requiredCiDb, baseMw, couplingMw, capDb, allowanceDb } = problem;
  const systemCount = wantedDbm.length;
  const channelCounts = Int32Array.from(baseMw, (row) => row.length);
  const starts = Int32Array.from(channelCounts, (_, r) =>
    channelCounts.slice(0, r).reduce((a, b) => a + b, 0),
  );
  const bearableMw = wantedDbm.map((wanted, r) =>
    dbToRatio(wanted - requiredCiDb[r]! - (allowanceDb?.[r] ?? 0)),
  );
  const gainRatios = new Float64Array(systemCount * systemCount);
  couplingMw.forEach((row, r) => {
    row.forEach((powerMw, o) => {
      if (r !== o) gainRatios[r * systemCount + o] = powerMw / bearableMw[r]!;
    });
  });
  return {
    systemCount,
    channelCounts,
    starts,
    baseRatios: Float64Array.from(baseMw.flatMap((row, r) => row.map((powerMw) => powerMw / bearableMw[r]!))),
    usable: Uint8Array.from(baseMw.flatMap((row, r) => row.map((_, c) => (mayUse(problem, r, c) ? 1 : 0)))),
    floorRatios: Float64Array.from(bearableMw, (_, r) =>
      dbToRatio((allowanceDb?.[r] ?? 0) - (capDb?.[r] ?? Infinity)),
    ),
    gainRatios,
    tables: pairTables(problem, channelCounts),
  };
}

function mayUse({ allowedChannels, fixedChannels }: AssignmentProblem, r: number, c: number): boolean {
  const allowed = allowedChannels?.[r];
  const fixed = fixedChannels?.[r];
  return (allowed === undefined || allowed.includes(c)) && (fixed === undefined || fixed === c);
}

/** Where overlap depends on the distance alone, pairs with as many channels share a table. */
function pairTables({ overlap, overlapOf }: AssignmentProblem, channelCounts: Int32Array): OverlapTable[] {
  const shared = new Map<string, OverlapTable>();
  return Array.from(channelCounts).flatMap((rows, r) =>
    Array.from(channelCounts, (columns, o) => {
      if (overlapOf) return overlapTable(rows, columns, (c, d) => (r === o ? 0 : overlapOf(r, c, o, d)));
      const key = `${rows} ${columns}`;
      const table = shared.get(key) ?? overlapTable(rows, columns, (c, d) => overlap[Math.abs(c - d)]!);
      shared.set(key, table);
      return table;
    }),
  );
}

/** @returns [system] the load of each at an assignment, never below its floor */
export function loadsOf(loads: AssignmentLoads, channels: ArrayLike<number>): Float64Array {
  const { systemCount, starts, baseRatios, floorRatios, gainRatios, tables } = loads;
  const result = new Float64Array(systemCount);
  for (let r = 0; r < systemCount; r++) {
    let load = baseRatios[starts[r]! + channels[r]!]!;
    for (let o = 0; o < systemCount; o++) {
      const gain = gainRatios[r * systemCount + o]!;
      if (gain === 0) continue;
      const { columnCount, shareRatios } = tables[r * systemCount + o]!;
      load += gain * shareRatios[channels[r]! * columnCount + channels[o]!]!;
    }
    result[r] = Math.max(floorRatios[r]!, load);
  }
  return result;
}
