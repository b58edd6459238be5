import { printable } from "../issues/index.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import type { SystemPlacement } from "./place-report.js";
import { whereOnPlan } from "./place-words.js";
import { bullets } from "./section.js";
import { clipped, tableLines } from "./text-layout.js";
import { verdictMark } from "./verdict-mark.js";

/** Two transmitters: where, which receivers are whose, and what the second costs in the band. */
export function pairLines({ plan, joint, jointReason }: SystemPlacement, style: TextStyle): string[] {
  const { pair } = plan;
  if (pair === null) return [];
  const { units } = style;
  const halves = pair.places.map((place, index) => {
    const theirs = pair.margins.filter(({ receiver }) => pair.receivers[index]!.includes(receiver));
    const least = theirs.reduce((a, b) => (b.workingMarginDb < a.workingMarginDb ? b : a), theirs[0]!);
    const names = theirs.map(({ receiver }) => printable(receiver, 24)).join(", ");
    const spare = `${verdictMark(least.workingMarginDb)} ${fixed(least.workingMarginDb, 1)} dB at ${printable(least.receiver, 24)}`;
    return `${"PQ"[index]} at ${whereOnPlan(place, units)}: ${names}; ${spare}.`;
  });
  return [
    ...bullets(halves, style),
    ...(joint === null
      ? bullets(jointReason === null ? [] : [`Their channels: ${jointReason}.`], style)
      : []),
    ...(joint === null ? [] : jointTable(joint, style)),
    ...bullets(joint === null ? [] : [jointWords(joint)], style),
  ];
}

function jointTable(joint: NonNullable<SystemPlacement["joint"]>, style: TextStyle): string[] {
  const cell = (channel: number | null, marginDb: number | null): string[] => [
    channel === null ? "-" : String(channel),
    marginDb === null ? "-" : `${verdictMark(marginDb)} ${fixed(marginDb, 1)}`,
  ];
  const rows = joint.systems.map((system) => [
    clipped(printable(system.name, 30), 24),
    ...cell(system.oneChannel, system.oneMarginDb),
    ...cell(system.twoChannel, system.twoMarginDb),
  ]);
  const right = ["radio ch, one", "spare", "radio ch, two", "spare"];
  return tableLines(
    [{ head: "system", align: "left" }, ...right.map((head) => ({ head, align: "right" as const }))],
    [...rows, ["smallest", "", dbCell(joint.oneMinMarginDb), "", dbCell(joint.twoMinMarginDb)]],
    style.columnCount,
  );
}

function jointWords({ oneMarginDb, twoMarginDb }: NonNullable<SystemPlacement["joint"]>): string {
  const where = "The joint plan of all systems, the others where the venue file has them";
  if (twoMarginDb <= oneMarginDb)
    return `${where}: the second has to take a worse channel, so that two are no better than one.`;
  return `${where}: two transmitters gain ${fixed(twoMarginDb - oneMarginDb, 1)} dB here.`;
}

function dbCell(valueDb: number): string {
  return `${verdictMark(valueDb)} ${fixed(valueDb, 1)}`;
}
