import { printable } from "../issues/index.js";
import type { LabelChannel, PatchLabel, SwitchSetting } from "../patch/index.js";
import { emergencyLines } from "./emergency-lines.js";
import { patchGlance } from "./patch-glance.js";
import type { PatchReport } from "./patch-report.js";
import { cautionSection } from "./patch-text.js";
import type { TextStyle } from "./pen.js";
import { opening, pageText, section } from "./section.js";
import { clipped, columnsOf, wrapped } from "./text-layout.js";

/** A label for each luminaire, to cut out along the lines, in the order of hanging. */
export function patchLabelsText(report: PatchReport, style: TextStyle): string {
  const { patch } = report;
  const parts = [
    opening(patchGlance(report), style),
    section("Emergency and exit lighting", style, emergencyLines(patch.emergency, style)),
    section("Labels", style, [
      ...wrapped(LABELS_KEY, style.columnCount),
      ...patch.labels.flatMap((label) => [CUT, ...labelLines(label, report, style)]),
      CUT,
    ]),
    cautionSection(report, style),
  ];
  return pageText(parts);
}

const CUT = "- ".repeat(40).trimEnd();
/** How a label is read. */
export const LABELS_KEY =
  "Fill in what is open before they go up: stillband rooms names radio channel and fallback. Switches: value = address; some fixtures count from zero, their row stands below. Check on the ground which one yours is.";

function labelLines(label: PatchLabel, report: PatchReport, style: TextStyle): string[] {
  const { name, room, universe, address, lastSlot, footprintSlotCount, mode, receiver, system } = label;
  const { emergency, systems } = report.patch;
  const hops = systems.find((one) => one.name === system)?.hops === true;
  const to = lastSlot === null || lastSlot === address ? "" : ` to ${lastSlot}`;
  const slots =
    footprintSlotCount === null
      ? "____ slots"
      : `${footprintSlotCount} ${footprintSlotCount === 1 ? "slot" : "slots"}`;
  const lines = [
    sides(
      style.pen.strong(clipped(printable(name, 60), 34)),
      clipped(printable(name, 60), 34),
      `DMX address ${address ?? "____"}   universe ${universe ?? "____"}`,
    ),
    sides(clipped(printable(room, 60), 34), null, `${slots}${to === "" ? "" : `, ${address}${to}`}`),
    `mode ${mode === null ? "________________" : clipped(printable(mode, 60), 66)}`,
    `receiver ${receiver === null ? "its own" : clipped(printable(receiver, 60), 24)}, system ${system === null ? "________" : clipped(printable(system, 60), 24)}`,
    hops
      ? "the radio hops: no radio channel to set"
      : `${channelWords("radio ch", label.channel)}   ${channelWords("fallback", label.fallback)}`,
    ...emergencyOf(name, emergency),
    ...switchLines(label, report.switchCounts),
  ];
  return lines.map((line) => line.trimEnd());
}

/** Two texts at both ends of half a line. @param plain the left one without marks, where it has some */
function sides(left: string, plain: string | null, right: string): string {
  return `${left}${" ".repeat(Math.max(2, 36 - columnsOf(plain ?? left)))}${right}`;
}

/** @returns the channel, or a blank to fill in */
function channelWords(what: string, channel: LabelChannel | null): string {
  return channel === null ? `${what} ________` : `${what} ${channel.channel} (${channel.centreMhz} MHz)`;
}

function emergencyOf(name: string, { names, unknownNames }: PatchReport["patch"]["emergency"]): string[] {
  if (names.includes(name)) return ["EMERGENCY OR EXIT LIGHTING: must not depend on the radio link"];
  return unknownNames.includes(name) ? ["EMERGENCY OR EXIT LIGHTING? NOT KNOWN: ask before it hangs"] : [];
}

function switchLines({ switches }: PatchLabel, values: readonly number[]): string[] {
  const row = (title: string, cells: readonly string[]): string =>
    `${title.padEnd(16)}${cells.map((cell) => cell.padStart(5)).join("")}`;
  const heads = [
    row(
      "switch",
      values.map((_, index) => String(index + 1)),
    ),
    row("counts", values.map(String)),
  ];
  if (switches === null)
    return [
      ...heads,
      row(
        "on",
        values.map(() => "__"),
      ),
    ];
  const cells = (setting: SwitchSetting): string[] => setting.map((on) => (on ? "ON" : "-"));
  const { address, fromOne, fromZero } = switches;
  return [
    ...heads,
    fromOne === null
      ? `value ${address}: nine switches can't say it; only a fixture that counts from zero`
      : row(`value ${address}`, cells(fromOne)),
    row(`from zero ${address - 1}`, cells(fromZero)),
  ];
}
