import { decodeText } from "./decode-text.js";
import { detectFormat } from "./detect-format.js";
import { fillFrom } from "./fill.js";
import type { Fill } from "./fill.js";
import { readIwScanText } from "./iw-scan-text.js";
import { describeText, isNoText, sayNoUsableRow } from "./no-usable-row.js";
import { readOsText } from "./os-text.js";
import { formatNames, sayStrays } from "./os-text-words.js";
import { openScan } from "./open-scan.js";
import { readHead } from "./read-head.js";
import type { Head } from "./read-head.js";
import { readSweep } from "./read-sweep.js";
import { readScanCsv } from "./scan-csv.js";
import type { ReadScanOptions, ScanImport, ScanInput } from "./scan-import.js";
import { ScanTally } from "./scan-tally.js";
import { sweepSettingFrom } from "./sweep-setting.js";
import { watchedInput } from "./watched-input.js";

/**
 * Reads one scan file, whatever it is by its content: a power sweep, a scan CSV with any delimiter, or the text that
 * `iw`, `nmcli`, `wpa_cli` or `netsh` prints. What can't be used is returned as issues, never thrown; a file with
 * no usable row has one of code `no-usable-row`. Memory is bounded by the readings kept.
 * An input is read to its end or left: an iterator's `return` or a stream's `cancel` is called.
 * @param input text, or bytes in UTF-8 or UTF-16, whole, in chunks or as a Web stream
 * @param options the file's name, what stands in for blank cells, and a signal, looked at before each chunk and
 *   every 256 Ki of what comes whole
 * @returns what could be used, what could not and why; plain data, which can be posted from a worker
 * @throws {ArgumentError} when the input is neither text nor bytes, or an option can't be what it should be
 * @throws whatever the input's own iterator or stream throws; the signal's reason when it is aborted
 * @example (await readScan("ssid,channel,signal_dbm\nFoyer,6,-60\n", { source: "a.csv" })).readings.length; // => 1
 */
export async function readScan(input: ScanInput, options: ReadScanOptions): Promise<ScanImport> {
  const fill = fillFrom(options);
  const sweepSetting = sweepSettingFrom(options, fill);
  const { layout, input: whole, bytes } = await openScan(watchedInput(input, options));
  if (layout !== null) return readSweep(bytes(), layout, sweepSetting);
  const tally = new ScanTally(fill.source);
  const text = decodeText(whole);
  try {
    const { format, found } = await readPieces(await readHead(text), fill, tally);
    return imported(tally, format, found);
  } finally {
    await text.return();
  }
}

function imported(tally: ScanTally, format: ScanImport["format"], found: string): ScanImport {
  if (tally.readings.length === 0) sayNoUsableRow(tally, found);
  return {
    source: tally.source,
    format,
    hasAges: format === "linux-iw-scan",
    readings: tally.readings,
    sweep: null,
    rowCount: tally.rowCount,
    rejectedCount: tally.rejectedCount,
    outOfBandCount: tally.outOfBandCount,
    issues: tally.issues(),
    ...(tally.channels.size > 0 && { channels: tally.channels }),
    ...(tally.needsChannels && { needsChannels: true }),
  };
}

async function readPieces(
  { head, isWhole, pieces }: Head,
  fill: Fill,
  tally: ScanTally,
): Promise<{ readonly format: ScanImport["format"]; readonly found: string }> {
  if (isNoText(head) || (!isWhole && head.trim() === ""))
    return { format: "unknown", found: describeText(head) };
  const detected = detectFormat(head, isWhole, fill.columns);
  if (detected.format === "scan-csv")
    return { format: "scan-csv", found: await readScanCsv(pieces, detected.delimiter, fill, tally) };
  if (detected.format === "mixed") return { format: "unknown", found: formatNames(detected.formats) };
  const found = describeText(head);
  if (detected.format !== "text") {
    await readOsText(detected.format, pieces, fill, tally);
    if (detected.strays.length > 0) sayStrays(detected.strays, tally);
    return { format: tally.rowCount > 0 ? detected.format : "unknown", found };
  }
  const isBinary = head.includes("\0") && !/^[ \t]*BSS /m.test(head);
  if (!isBinary) await readIwScanText(pieces, fill, tally);
  return { format: tally.rowCount > 0 ? "linux-iw-scan" : "unknown", found };
}
