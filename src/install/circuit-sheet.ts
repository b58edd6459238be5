import {
  ArgumentError,
  requireNonNegative,
  requirePositive,
  requireRatio,
  requireWhole,
} from "../issues/index.js";
import { circuitRow } from "./circuit-row.js";
import type { Circuit, CircuitOptions, CircuitSheet } from "./circuit-types.js";
import { emergencyNotice } from "./emergency-notice.js";
import { given, requireDistinct } from "./hang-requirements.js";

/**
 * The circuit and cord sheet: I = P/(U·λ) summed by circuit, times the continuous factor, against the breaker; the
 * conductor by use, by ampacity for the breaker, and by voltage drop. What is not known is asked for, never taken
 * as good.
 * @param options watts, volts, amperes; cord lengths in m
 * @returns a row for each circuit, in the order of `circuits`, then of the luminaires
 * @throws {ArgumentError} when a figure can't be one, or two luminaires or circuits have one name
 * @source tables and their status beside each figure of `AWG_CORDS` and `MM2_CORDS`; factor 1.25: NEC 210.20(A) and the
 *   Canadian code's 80 %, from memory; 3 % drop: NEC 210.19(A), informational, read second-hand
 * @validity single phase; 30 °C around the cords; inrush is the maker's table, not this sheet's
 * @example
 * const luminaires = [{ name: "P1", room: "loft", circuit: "A", watts: 600, feedM: 3 }];
 * const circuits = [{ circuit: "A", supplyV: 120, breakerA: 20, feed: "own-box", control: "none" }];
 * const [row] = circuitSheet({ luminaires, circuits, region: "US", powerFactorRatio: 1 }).rows;
 * [row.loadA, row.countedA, row.verdict, row.choice.conductor.name]; // => [5, 6.25, "within", "12 AWG"]
 */
export function circuitSheet(options: CircuitOptions): CircuitSheet {
  requireCircuitOptions(options);
  const { luminaires, region = null, supplyV = null, sizes = "awg", loadedCount = 2 } = options;
  const { powerFactorRatio = POWER_FACTOR_RATIO, mostDropRatio = MOST_DROP_RATIO } = options;
  const ofRegion = region === "US" || region === "CA" ? NORTH_AMERICAN_FACTOR_RATIO : null;
  const factorRatio = options.continuousFactorRatio ?? ofRegion;
  const continuousFactorRatio = factorRatio ?? 1;
  const setting = {
    ...{ continuousFactorRatio, isFactorGiven: factorRatio !== null, supplyV, powerFactorRatio },
    ...{ sizes, loadedCount, mostDropRatio },
  };
  const rows = allCircuits(options).map((circuit) => {
    const loads = luminaires.filter((luminaire) => luminaire.circuit === circuit.circuit);
    return circuitRow(circuit, loads, setting);
  });
  return {
    rows,
    withoutCircuit: luminaires.filter(({ circuit }) => circuit === null).map(({ name }) => name),
    continuousFactorRatio,
    continuousFactorStatus:
      (options.continuousFactorRatio ?? null) !== null ? "given" : ofRegion !== null ? "region" : "not-given",
    powerFactorAssumed: options.powerFactorRatio === undefined && luminaires.some(isAssumed),
    ...{ mostDropRatio, loadedCount },
    emergency: emergencyNotice(luminaires),
  };
}

/** Assumed: mains drivers of some size are corrected to this or better. */
const POWER_FACTOR_RATIO = 0.9;
const MOST_DROP_RATIO = 0.03;
/** 100 % ÷ 80 %, from memory. */
const NORTH_AMERICAN_FACTOR_RATIO = 1.25;

function isAssumed({ powerFactorRatio = null }: { readonly powerFactorRatio?: number | null }): boolean {
  return powerFactorRatio === null;
}

/** Those of the list, and those that only a luminaire names: all about them is unknown. */
function allCircuits({ circuits = [], luminaires }: CircuitOptions): Circuit[] {
  const listed = new Set(circuits.map(({ circuit }) => circuit));
  const named = new Set(luminaires.flatMap(({ circuit }) => circuit ?? []));
  return [...circuits, ...[...named].filter((name) => !listed.has(name)).map((circuit) => ({ circuit }))];
}

function requireCircuitOptions({ luminaires, circuits = [], ...options }: CircuitOptions): void {
  requireDistinct("luminaires", luminaires);
  requireDistinct(
    "circuits",
    circuits.map(({ circuit }) => ({ name: circuit })),
  );
  luminaires.forEach(({ watts, powerFactorRatio, feedM }, index) => {
    const at = `luminaires[${index}]`;
    given(`${at}.watts`, watts, requireNonNegative);
    given(`${at}.powerFactorRatio`, powerFactorRatio, requireFactor);
    given(`${at}.feedM`, feedM, requireNonNegative);
  });
  circuits.forEach(({ supplyV, breakerA, upstreamDropV, mostDriversCount }, index) => {
    const at = `circuits[${index}]`;
    given(`${at}.supplyV`, supplyV, requirePositive);
    given(`${at}.breakerA`, breakerA, requirePositive);
    given(`${at}.upstreamDropV`, upstreamDropV, requireNonNegative);
    given(`${at}.mostDriversCount`, mostDriversCount, (name, count) =>
      requireWhole(name, count, 0, Number.MAX_SAFE_INTEGER),
    );
  });
  given("supplyV", options.supplyV, requirePositive);
  given("powerFactorRatio", options.powerFactorRatio, requireFactor);
  given("continuousFactorRatio", options.continuousFactorRatio, requireNoDiscount);
  given("mostDropRatio", options.mostDropRatio, requireRatio);
}

/** A continuous load never counts for less. */
function requireNoDiscount(argument: string, ratio: number): void {
  if (!Number.isFinite(ratio) || ratio < 1) throw new ArgumentError(argument, "a finite number ≥ 1", ratio);
}

function requireFactor(argument: string, ratio: number): void {
  requirePositive(argument, ratio);
  requireRatio(argument, ratio);
}
