import type { AssignmentProblem } from "../../src/venue/index.js";

/** The best assignment of a problem by looking at all of them. */
export interface BruteForced {
  readonly assignment: readonly number[];
  /** Smallest first, dB. */
  readonly valuesDb: readonly number[];
}

const TIE_DB = 1e-9;

/**
 * Every assignment in order, straight from the definition, the first of equals kept. A branch is left only where
 * its loads so far, which can but grow, already give some system less than the best smallest value.
 */
export function bruteForceAssignment(problem: AssignmentProblem, { least = false } = {}): BruteForced {
  const systemOf = problem.systemOf ?? problem.baseMw.map((_, row) => row);
  const systemCount = Math.max(...systemOf) + 1;
  const channels: number[] = [];
  let best: BruteForced = { assignment: [], valuesDb: [-Infinity] };
  const descend = (): void => {
    const valuesDb = channels.map((_, r) => valueSoFar(problem, systemOf, channels, r)).sort((a, b) => a - b);
    if (valuesDb.length > 0 && valuesDb[0]! < best.valuesDb[0]! - TIE_DB) return;
    if (channels.length === systemCount) {
      const shown = least ? valuesDb.slice(0, 1) : valuesDb;
      if (best.assignment.length === 0 || isBetter(shown, best.valuesDb))
        best = { assignment: [...channels], valuesDb: shown };
      return;
    }
    const r = channels.length;
    for (let c = 0; c < problem.baseMw[systemOf.indexOf(r)]!.length; c++) {
      if (problem.allowedChannels?.[r]?.includes(c) === false) continue;
      if (problem.fixedChannels?.[r] !== undefined && problem.fixedChannels[r] !== c) continue;
      channels.push(c);
      descend();
      channels.pop();
    }
  };
  descend();
  return best;
}

function isBetter(valuesDb: readonly number[], thanDb: readonly number[]): boolean {
  const k = valuesDb.findIndex((value, index) => Math.abs(value - thanDb[index]!) > TIE_DB);
  return k >= 0 && valuesDb[k]! > thanDb[k]!;
}

function valueSoFar(
  problem: AssignmentProblem,
  systemOf: readonly number[],
  channels: readonly number[],
  r: number,
): number {
  const channel = channels[r]!;
  let leastDb = Infinity;
  systemOf.forEach((system, row) => {
    if (system !== r) return;
    let totalMw = problem.baseMw[row]![channel]!;
    channels.forEach((other, o) => {
      const share = problem.overlapOf?.(r, channel, o, other) ?? problem.overlap[Math.abs(channel - other)]!;
      if (o !== r) totalMw += problem.couplingMw[row]![o]! * share;
    });
    const marginDb = problem.wantedDbm[row]! - 10 * Math.log10(totalMw) - problem.requiredCiDb[row]!;
    const valueDb = Math.min(marginDb, problem.capDb?.[row] ?? Infinity) - (problem.allowanceDb?.[row] ?? 0);
    leastDb = Math.min(leastDb, valueDb);
  });
  return leastDb;
}
