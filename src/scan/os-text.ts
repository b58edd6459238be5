import type { Fault } from "./fault.js";
import type { Fill } from "./fill.js";
import { readIwScanText } from "./iw-scan-text.js";
import { NETSH_SIGNAL, NetshReader } from "./netsh-text.js";
import { NmcliMultilineReader } from "./nmcli-multiline.js";
import { NMCLI_SIGNAL } from "./nmcli-section.js";
import { NmcliTableReader } from "./nmcli-table.js";
import { NmcliTerseReader } from "./nmcli-terse.js";
import type { OsTextFormat } from "./os-text-command.js";
import type { SignalRule } from "./os-text-row.js";
import { OsTextSink } from "./os-text-sink.js";
import type { ScanTally } from "./scan-tally.js";
import { textLines } from "./text-lines.js";
import type { TextLine } from "./text-lines.js";
import { withoutColours } from "./terminal-colours.js";
import { WPA_CLI_SIGNAL, WpaCliReader } from "./wpa-cli-text.js";

/** Reads the lines of one format, one by one. */
interface LineReader {
  read(line: TextLine): void;
  finish(): void;
}

type Reader = readonly [rule: SignalRule, open: new (sink: OsTextSink) => LineReader];

const READERS: Readonly<Record<Exclude<OsTextFormat, "linux-iw-scan">, Reader>> = {
  "linux-nmcli-terse": [NMCLI_SIGNAL, NmcliTerseReader],
  "linux-nmcli-table": [NMCLI_SIGNAL, NmcliTableReader],
  "linux-nmcli-multiline": [NMCLI_SIGNAL, NmcliMultilineReader],
  "linux-wpa-cli": [WPA_CLI_SIGNAL, WpaCliReader],
  "windows-netsh": [NETSH_SIGNAL, NetshReader],
};

/** Longer lines are no rows of these commands: a name has 32 bytes. */
const LONGEST_LINE_COUNT = 4_096;
const TOO_LONG: Fault = {
  code: "unreadable",
  expected: `a line of at most ${LONGEST_LINE_COUNT} characters`,
};

/** Reads the text of an operating system's own command into a tally. */
export async function readOsText(
  format: OsTextFormat,
  pieces: AsyncIterable<string>,
  fill: Fill,
  tally: ScanTally,
): Promise<void> {
  if (format === "linux-iw-scan") return readIwScanText(pieces, fill, tally);
  const [rule, Opened] = READERS[format];
  const sink = new OsTextSink(fill, tally, rule);
  const reader = new Opened(sink);
  const isColourful = rule === NMCLI_SIGNAL;
  for await (const lines of textLines(pieces))
    for (const line of lines)
      if (line.isTooLong) sink.stop(line.line);
      else if (line.text.length > LONGEST_LINE_COUNT) sink.reject(TOO_LONG, line.line);
      else reader.read(isColourful ? { ...line, text: withoutColours(line.text) } : line);
  reader.finish();
  sink.finish();
}
