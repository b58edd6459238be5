import { SLACK } from "../units/index.js";
import { chooseConductor } from "./choose-conductor.js";
import { circuitFlags } from "./circuit-flags.js";
import type { Circuit, CircuitLuminaire, CircuitRow, LuminaireDrop } from "./circuit-types.js";
import { ownBoxDropsV, throughFedDropsV } from "./cord-drop.js";
import type { CordConductor } from "./cord-conductors.js";

/** What all circuits of a sheet share. */
export interface CircuitSetting {
  readonly continuousFactorRatio: number;
  readonly isFactorGiven: boolean;
  readonly supplyV: number | null;
  readonly powerFactorRatio: number;
  readonly sizes: "awg" | "mm2";
  readonly loadedCount: 2 | 3;
  readonly mostDropRatio: number;
}

/** A circuit's line of the electrician's sheet. */
export function circuitRow(
  circuit: Circuit,
  loads: readonly CircuitLuminaire[],
  setting: CircuitSetting,
): CircuitRow {
  const { breakerA = null, feed = "unknown", control = "unknown" } = circuit;
  const supplyV = circuit.supplyV ?? setting.supplyV;
  const watts = loads.reduce((sum, load) => sum + (load.watts ?? 0), 0);
  const unknownLoads = loads.filter((load) => load.watts === null).map(({ name }) => name);
  const loadsA = supplyV === null ? null : loads.map((load) => currentA(load, supplyV, setting));
  const loadA = loadsA === null ? null : loadsA.reduce((sumA, eachA) => sumA + eachA, 0);
  const countedA = loadA === null ? null : loadA * setting.continuousFactorRatio;
  const dropsOf = dropsWith(circuit, loads, unknownLoads.length > 0 ? null : loadsA, supplyV);
  const choice = chooseConductor({
    ...{ feed, breakerA, sizes: setting.sizes, loadedCount: setting.loadedCount },
    mostDropRatio: setting.mostDropRatio,
    dropRatioOf: dropsOf === null ? null : (conductor) => greatest(dropsOf(conductor)) ?? 0,
  });
  const drops = dropsOf === null || choice.conductor === null ? [] : dropsOf(choice.conductor);
  const row = {
    ...{ circuit: circuit.circuit, control, feed, luminaires: loads.map(({ name }) => name) },
    feedsM: loads.map(({ feedM = null }) => feedM),
    ...{ watts, unknownLoads, supplyV, breakerA, loadA, countedA },
    verdict: verdictOf(countedA, breakerA, unknownLoads.length),
    ...{ choice, drops, greatestDropRatio: greatest(drops) },
  };
  return { ...row, flags: circuitFlags(circuit, row, setting.isFactorGiven) };
}

function currentA(
  { watts, powerFactorRatio }: CircuitLuminaire,
  supplyV: number,
  setting: CircuitSetting,
): number {
  return (watts ?? 0) / (supplyV * (powerFactorRatio ?? setting.powerFactorRatio));
}

function verdictOf(
  countedA: number | null,
  breakerA: number | null,
  unknownCount: number,
): CircuitRow["verdict"] {
  if (countedA === null || breakerA === null) return "not-judged";
  if (countedA > breakerA + SLACK) return "beyond";
  return unknownCount > 0 ? "not-judged" : "within";
}

/** Drops as a function of the conductor; null where a length, a load or the supply isn't known. */
function dropsWith(
  { feed = "unknown", upstreamDropV }: Circuit,
  loads: readonly CircuitLuminaire[],
  loadsA: readonly number[] | null,
  supplyV: number | null,
): ((conductor: CordConductor) => LuminaireDrop[]) | null {
  const feedsM = loads.flatMap(({ feedM = null }) => feedM ?? []);
  if (supplyV === null || loadsA === null || feedsM.length < loads.length) return null;
  const dropsV = feed === "own-box" ? ownBoxDropsV : throughFedDropsV;
  return ({ resistanceOhmPerM }) =>
    dropsV({ resistanceOhmPerM, feedsM, loadsA }).map((cordV, index) => {
      const dropV = cordV + (upstreamDropV ?? 0);
      return { name: loads[index]!.name, dropV, dropRatio: dropV / supplyV };
    });
}

function greatest(drops: readonly LuminaireDrop[]): number | null {
  return drops.length === 0 ? null : drops.reduce((most, { dropRatio }) => Math.max(most, dropRatio), 0);
}
