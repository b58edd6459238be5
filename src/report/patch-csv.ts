import type { SwitchSetting } from "../patch/index.js";
import type { CsvTable } from "./csv-table.js";
import { toldConflicts } from "./patch-words.js";
import type { PatchReport } from "./patch-report.js";

/** The address sheet as a table for a spreadsheet, labels included; a row a luminaire in the order of hanging. */
export function patchCsv({ patch, switchCounts }: PatchReport): CsvTable {
  const { addresses, labels, emergency, systems } = patch;
  const told = toldConflicts(patch);
  const rows = addresses.rows.map((row, index) => {
    const { switches, channel, fallback } = labels[index]!;
    const hops = systems.find(({ name }) => name === row.system)?.hops === true;
    const faults = told.filter(({ luminaires }) => luminaires.some(({ name }) => name === row.name));
    return [
      index + 1,
      ...[row.name, row.room, row.group, row.system, row.receiver ?? row.name, row.mode],
      ...[row.universe, row.address, row.lastSlot, row.footprintSlotCount],
      row.fixed ? "yes" : "no",
      row.reason,
      faults.map(({ kind }) => kind).join(" "),
      ...(hops ? ["hops", null] : [channel?.channel ?? null, channel?.centreMhz ?? null]),
      fallback?.channel ?? null,
      switches === null || switches.fromOne === null ? null : valuesOn(switches.fromOne, switchCounts),
      switches === null ? null : valuesOn(switches.fromZero, switchCounts),
      emergency.names.includes(row.name)
        ? "yes"
        : emergency.unknownNames.includes(row.name)
          ? "unknown"
          : "no",
    ];
  });
  return { heads: HEADS, rows };
}

const HEADS = [
  ...["order", "luminaire", "room", "group", "system", "receiver", "mode"],
  ...["universe", "dmx_address", "last_slot", "footprint_slots", "settled", "no_address_because", "faults"],
  ...["radio_channel", "radio_mhz", "fallback_channel", "switches_on", "switches_on_from_zero", "emergency"],
];

/** The values of the switches that are on, as `1 16`; `0`: all off. */
function valuesOn(setting: SwitchSetting, values: readonly number[]): string {
  const on = values.filter((_, index) => setting[index]);
  return on.length === 0 ? "0" : on.join(" ");
}
