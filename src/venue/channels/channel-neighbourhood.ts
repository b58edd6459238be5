import { loadsOf } from "./assignment-loads.js";
import type { AssignmentLoads } from "./assignment-loads.js";

/**
 * The same problem with all systems but a few held at their channels: the most loaded one, and one by one those that
 * are most strongly coupled with the ones already free, with some chance.
 * @param random uniform numbers in 0…1
 */
export function neighbourhoodOfWorst(
  loads: AssignmentLoads,
  channels: Int32Array,
  freeCount: number,
  random: () => number,
): AssignmentLoads {
  const { systemCount, starts, usable } = loads;
  const loadRatios = loadsOf(loads, channels);
  const free = new Uint8Array(systemCount);
  const bonds = new Float64Array(systemCount);
  let next = loadRatios.indexOf(Math.max(...loadRatios));
  for (let k = 0; k < freeCount && next >= 0; k++) {
    free[next] = 1;
    for (let o = 0; o < systemCount; o++) bonds[o]! += (0.5 + random()) * bondOf(loads, next, o);
    next = -1;
    for (let o = 0; o < systemCount; o++)
      if (free[o] === 0 && (next < 0 || bonds[o]! > bonds[next]!)) next = o;
  }
  const held = usable.map((may, slot) => {
    const r = systemOfSlot(starts, slot);
    return free[r] === 1 || slot === starts[r]! + channels[r]! ? may : 0;
  });
  return { ...loads, usable: held };
}

/** How much two systems have to do with each other: the greater coupling in dB would be wild, its root is tame. */
function bondOf({ systemCount, peakGainRatios }: AssignmentLoads, a: number, b: number): number {
  return Math.sqrt(Math.max(peakGainRatios[a * systemCount + b]!, peakGainRatios[b * systemCount + a]!));
}

function systemOfSlot(starts: Int32Array, slot: number): number {
  let system = starts.length - 1;
  while (starts[system]! > slot) system--;
  return system;
}
