import { printable } from "../issues/index.js";
import { glanceLine } from "./link-lines.js";
import { fixed } from "./number-format.js";
import { rangeWords } from "./patch-conflict-lines.js";
import type { PatchReport } from "./patch-report.js";
import { countOf, nameOf, namesOf, toldConflicts } from "./patch-words.js";
import { columnsOf } from "./text-layout.js";

/** Columns that a line of the opening block leaves for its words. */
const ROOM = 70;

/** The address sheet in at most eight lines of at most 80 columns. */
export function patchGlance(report: PatchReport): string[] {
  const lines: (readonly [label: string, words: string])[] = [
    ["Venue", venueWords(report)],
    ["Patch", patchWords(report)],
    ["Clashes", clashWords(report)],
    ["Overflow", overflowWords(report)],
    ["Refresh", refreshWords(report)],
    ["Emergency", emergencyWords(report)],
    ["Do", doWords(report)],
  ];
  return lines.map(([label, words]) => glanceLine(label, words));
}

/** The first that fits a line; the last where none does. */
function fitting(...variants: readonly string[]): string {
  return variants.find((words) => columnsOf(words) <= ROOM) ?? variants.at(-1)!;
}

function venueWords({ venueName, patch, room, system }: PatchReport): string {
  const { addresses, systems } = patch;
  const counts = `${countOf(addresses.rows.length, "luminaire")}, ${countOf(systems.length, "system")}, ${countOf(addresses.universes.length, "universe")}`;
  const part = [
    ...(room === null ? [] : [`room ${printable(room, 20)}`]),
    ...(system === null ? [] : [`system ${printable(system, 20)}`]),
  ];
  const only = part.length === 0 ? "" : `, ${part.join(", ")} alone`;
  return fitting(
    `${nameOf(venueName)}${only}: ${counts}`,
    `${printable(venueName, 20)}${only}: ${counts}`,
    `${part.length === 0 ? printable(venueName, 20) : part.join(", ")}: ${counts}`,
    counts,
  );
}

function patchWords({ patch }: PatchReport): string {
  const { rows, universes } = patch.addresses;
  const lastSlots = universes.map(({ universe, lastUsedSlot, systems }, index) => {
    const carriers =
      systems.length === 0 ? "" : ` (${systems.map((name) => printable(name, 20)).join(", ")})`;
    return {
      named: `${universe}${carriers} to ${index === 0 ? "slot " : ""}${lastUsedSlot}`,
      bare: `${universe} to ${lastUsedSlot}`,
    };
  });
  const without = rows.filter(({ address }) => address === null).length;
  const open = without === 0 ? "" : `; ${without} WITHOUT address`;
  return fitting(
    `universe ${lastSlots.map(({ named }) => named).join(", ")} of 512${open}`,
    `universe ${lastSlots.map(({ bare }) => bare).join(", ")}${open}`,
    `${universes.length} universes, the fullest to slot ${Math.max(0, ...universes.map(({ lastUsedSlot }) => lastUsedSlot))} of 512${open}`,
  );
}

function clashWords({ patch }: PatchReport): string {
  const told = toldConflicts(patch);
  const errors = told.filter(({ severity }) => severity === "error");
  const lookCount = told.length - errors.length;
  const look = lookCount === 0 ? "" : `${errors.length === 0 ? "" : "; "}${lookCount} to look at`;
  if (errors.length === 0) return look === "" ? "none" : `none; ${look}`;
  const overlap = errors.find(({ kind, slots }) => kind === "overlap" && slots !== null);
  const count = errors.length === 1 ? "1 FAULT" : `${errors.length} FAULTS`;
  const first =
    overlap === undefined
      ? `: ${nameOf(errors[0]!.luminaires[0]!.name)}`
      : `: universe ${overlap.universe ?? "?"} ${rangeWords(overlap.slots!.firstSlot, overlap.slots!.lastSlot)}, ${namesOf(overlap.luminaires.map(({ name }) => name))}`;
  const more = errors.length > 1 ? " and more" : "";
  return fitting(`${count}${first}${more}${look}`, `${count}${look}: each is named below`);
}

function overflowWords({ patch }: PatchReport): string {
  const { overflows } = patch;
  if (overflows.length === 0) return "none";
  const count = overflows.reduce((sum, { luminaires }) => sum + luminaires.length, 0);
  const further = overflows.reduce((sum, { furtherSystemCount }) => sum + furtherSystemCount, 0);
  const words = `${count === 1 ? "1 luminaire NEEDS" : `${count} luminaires NEED`} ${further === 1 ? "a further system" : `${further} further systems`}`;
  const names = overflows.flatMap(({ luminaires }) => luminaires);
  return fitting(
    `${words}: ${namesOf(names)}`,
    `${words}: ${nameOf(names[0]!)} and more, named below`,
    `${words}, named below`,
  );
}

function refreshWords({ patch }: PatchReport): string {
  const { full } = patch.refresh;
  const frame = `512 slots sent: ${fixed(full.frameUs / 1000, 0)} ms a frame, ${Math.floor(full.rateHz)} a second`;
  const rates = [...new Set(patch.systems.map(({ frameRateHz }) => frameRateHz))];
  const assumed = patch.systems.some(({ frameRateAssumed }) => frameRateAssumed) ? " (assumed)" : "";
  const radio = rates.length === 1 ? `; the radio's ${rates[0]}${assumed}` : "";
  return fitting(`${frame}${radio}`, frame);
}

function emergencyWords({ patch }: PatchReport): string {
  const { names, unknownNames } = patch.emergency;
  const counted = names.length === 0 ? "" : `; ${names.length === 1 ? "1 COUNTS" : `${names.length} COUNT`}`;
  if (unknownNames.length === 0)
    return names.length === 0
      ? "no luminaire counts as emergency or exit lighting"
      : fitting(
          `must not depend on the radio link: ${namesOf(names)}`,
          `must not depend on the radio link: ${countOf(names.length, "luminaire")}`,
        );
  return fitting(
    `NOT KNOWN for ${namesOf(unknownNames)}: ask before ${unknownNames.length === 1 ? "it hangs" : "they hang"}${counted}`,
    `NOT KNOWN for ${countOf(unknownNames.length, "luminaire")}: ask before they hang${counted}`,
  );
}

function doWords({ patch }: PatchReport): string {
  const hasErrors = toldConflicts(patch).some(({ severity }) => severity === "error");
  const toFill = patch.systems.some(({ hops, channel }) => !hops && channel === null);
  const freed = patch.overflows.length > 0 && patch.overflows.every(({ fitsInFreeOrder }) => fitsInFreeOrder);
  const steps = [
    ...(hasErrors ? ["mend the faults"] : []),
    ...(patch.overflows.length === 0 ? [] : [freed ? "try --order fewest" : "add the system"]),
    ...(toFill ? ["write the radio channels in"] : []),
    "set addresses on the ground",
  ];
  return fitting(steps.map((step, index) => `${index + 1} ${step}`).join("; "));
}
