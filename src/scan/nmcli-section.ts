import type { Fault } from "./fault.js";
import { isUsable } from "./nmcli-kinds.js";
import type { NmcliKind } from "./nmcli-kinds.js";
import { nameOfHex } from "./nmcli-name-column.js";
import type { OsTextRow, SignalRule } from "./os-text-row.js";
import { parseOsSignal, SIGNAL_EXPECTED } from "./os-text-signal.js";
import type { OsTextSink } from "./os-text-sink.js";

/** `nmcli` prints signals in percent. */
export const NMCLI_SIGNAL: SignalRule = { expected: SIGNAL_EXPECTED, parse: parseOsSignal };

/** One row of `nmcli` output: its cells by column; null where they can't be told apart. */
export interface NmcliCells {
  readonly line: number;
  readonly cells: readonly string[] | null;
}

/** Gives the rows of one output of `nmcli` to a sink; each is rejected where the columns can't make a row. */
export function addNmcliRows(
  rows: readonly NmcliCells[],
  kinds: readonly NmcliKind[],
  sink: OsTextSink,
): void {
  const missing = isUsable(kinds) ? null : missingColumns(kinds);
  const isQuoted = allQuoted(rows, kinds);
  for (const { line, cells } of rows) {
    if (missing !== null) sink.reject(missing, line);
    else if (cells === null) sink.reject(RAGGED, line);
    else sink.add(nmcliRow(cells, kinds, line, isQuoted));
  }
}

function nmcliRow(
  cells: readonly string[],
  kinds: readonly NmcliKind[],
  line: number,
  isQuoted: boolean,
): OsTextRow {
  const cell = (kind: NmcliKind): string | null => {
    const index = kinds.indexOf(kind);
    return index === -1 ? null : cells[index]!;
  };
  const name = cell("name") ?? nameOfHex(cell("nameHex") ?? "");
  return {
    line,
    name: isQuoted && name.length > 1 ? name.slice(1, -1) : name,
    address: cell("address"),
    frequency: cell("frequency"),
    channel: cell("channel"),
    width: cell("width"),
    signal: cell("signal"),
  };
}

/** Older versions put every name into single quotes. */
function allQuoted(rows: readonly NmcliCells[], kinds: readonly NmcliKind[]): boolean {
  const index = kinds.indexOf("name");
  const names = rows
    .flatMap(({ cells }) => cells?.[index] ?? [])
    .filter((name) => name !== "--" && name !== "");
  return names.length > 0 && names.every((name) => /^'.*'$/s.test(name));
}

const RAGGED: Fault = { code: "ragged-row", expected: "as many fields as the rows around it have" };

function missingColumns(kinds: readonly NmcliKind[]): Fault {
  return {
    code: "missing-column",
    column: kinds.includes("signal") ? "CHAN" : "SIGNAL",
    expected:
      "SIGNAL, CHAN or FREQ, and BSSID or SSID, as: nmcli -f BSSID,SSID,CHAN,FREQ,SIGNAL device wifi list",
  };
}
