import { fixed } from "./number-format.js";
import type { PatchReport } from "./patch-report.js";
import { rangeWords } from "./patch-conflict-lines.js";
import { countOf } from "./patch-words.js";

/** What the address sheet rests on, one statement a line. */
export function patchAssumptions({ patch }: PatchReport): string[] {
  const { options, addresses, refresh } = patch;
  const { order, spareSlotCount, alignSlotCount, reserved } = options;
  const settled = addresses.rows.filter((row) => row.fixed).length;
  const { timing, full, fullUsualBreak } = refresh;
  return [
    order === "hanging"
      ? "Order of hanging: systems, rooms, groups and luminaires as the venue file lists them, rooms and groups kept together; addresses rise with it."
      : "Addresses fill the fewest universes; rows stand in the order of hanging all the same.",
    `Addresses that the venue file settles stay as they are: ${settled} of ${addresses.rows.length}.`,
    `Spare behind each group: ${countOf(spareSlotCount, "slot")} (--spare); ${
      alignSlotCount === 1
        ? "no raster of start addresses (--align)"
        : `start addresses are 1, ${1 + alignSlotCount}, ${1 + 2 * alignSlotCount} … (--align)`
    }; reserved: ${
      reserved.length === 0
        ? "nothing (--reserve)"
        : reserved
            .map(
              ({ universe, firstSlot, lastSlot }) =>
                `${rangeWords(firstSlot, lastSlot)} of ${universe === null ? "every universe" : `universe ${universe}`}`,
            )
            .join(", ")
    }.`,
    "512 slots a universe (ANSI E1.11), universes 1 to 63999 (ANSI E1.31); no luminaire lies across the end of one; a transmitter carries as many universes as its profile says.",
    `Refresh by ANSI E1.11: break ${timing.leastBreak.valueUs} us and mark after break ${timing.leastMarkAfterBreak.valueUs} us, the shortest that may be sent, at least ${timing.leastBreakToBreak.valueUs} us from break to break (all three from memory), slots of ${timing.slot.valueUs} us without gaps. 512 slots: ${fixed(full.frameUs / 1000, 3)} ms, ${fixed(full.rateHz, 2)} a second; with the usual break of ${timing.typicalBreak.valueUs} us ${fixed(fullUsualBreak.rateHz, 2)}. Most desks send all 512; many pause between frames.`,
    `The radio has a frame rate of its own: ${radioRates(patch.systems)}. What arrives is the slower of the two.`,
    "Radio channels stand only where the venue file settles them; the fallback comes from stillband rooms.",
    "Switches: common practice, no source; with all nine off a luminaire may have another meaning in mind.",
  ];
}

function radioRates(systems: PatchReport["patch"]["systems"]): string {
  const rates = new Map<string, string[]>();
  for (const { name, frameRateHz, frameRateAssumed } of systems) {
    const words = `${frameRateHz} frames a second${frameRateAssumed ? " (assumed)" : ""}`;
    rates.set(words, [...(rates.get(words) ?? []), name]);
  }
  if (rates.size === 1) return [...rates.keys()][0]!;
  return [...rates].map(([words, names]) => `${names.length} systems ${words}`).join(", ");
}
