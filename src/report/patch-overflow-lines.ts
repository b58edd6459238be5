import type { OverflowCost, PatchPlan } from "../venue/index.js";
import { wholePercent } from "./number-format.js";
import { countOf, nameOf, namesOf } from "./patch-words.js";

/** Who finds no room in a system's universes, what would help, and what a further system costs in the band. */
export function overflowLines({ overflows, systems }: PatchPlan): string[] {
  return overflows.flatMap((overflow) => {
    const own = systems.find(({ name }) => name === overflow.system);
    return [whoWords(overflow), ...orderWords(overflow), costWords(overflow, own?.hops === true)];
  });
}

function whoWords({ system, luminaires, slotCount }: OverflowCost): string {
  return `${nameOf(system)} has no room for ${countOf(luminaires.length, "luminaire")}, ${countOf(slotCount, "slot")}: ${namesOf(luminaires)}.`;
}

/** Does it help to give up the order of hanging? */
function orderWords({ fitsInFreeOrder, system }: OverflowCost): string[] {
  if (fitsInFreeOrder === true)
    return [`All of ${nameOf(system)} fit if the order is free: --order fewest, and no further system.`];
  if (fitsInFreeOrder === false) return ["No other order makes them fit: that is proved."];
  return [];
}

function costWords(
  { system, furtherSystemCount, furtherUniverseCount, airtimeRatio, firstFurtherUniverse }: OverflowCost,
  hops: boolean,
): string {
  const count =
    furtherSystemCount === 1
      ? "One further system: a second transmitter"
      : `${furtherSystemCount} further systems: as many transmitters`;
  const own = hops ? "with a hop set of its own" : "on a radio channel of its own";
  const air = `on the air ${wholePercent(airtimeRatio)} of the time`;
  const each = furtherSystemCount === 1 ? "" : " each";
  const number =
    firstFurtherUniverse === null
      ? "no universe number is left behind those in use"
      : furtherUniverseCount === 1
        ? `universe ${firstFurtherUniverse} is free`
        : `universes ${firstFurtherUniverse} to ${firstFurtherUniverse + furtherUniverseCount - 1} are free`;
  return `${count}, ${own}, ${air}${each} beside ${nameOf(system)}, fed through an isolated splitter; ${number}. Add it to the venue file, then stillband rooms tells what it costs the others in dB.`;
}
