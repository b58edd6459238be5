import type { NetshLine } from "./netsh-line.js";
import type { OsTextRow } from "./os-text-row.js";
import type { WifiStandard } from "./reading.js";
import { wifiStandard } from "./wifi-standard.js";

const SIGNAL = /^(?:\d{1,3}\s*%|[%٪]\s*\d{1,3})$/;
const LEVEL = /^-\d{1,3}(?:\s*dBm)?$/i;
const LOAD = /^(\d{1,5})\s*\(\s*(?:(\d{1,3})\s*%|[%٪]\s*(\d{1,3}))\s*\)$/;
const BAND = /^\d(?:[.,]\d)?\s*GHz$/i;
const RADIO_TYPE = /^802\.11\s?([a-z]{1,2})$/i;

/**
 * What one radio's lines in `netsh` output have said so far, told by the shape of their values alone: the
 * words before the colon are in the language of the system. The first whole number is the channel, but for
 * keys with a unit in brackets (the rates) and lines of the load section, whose own first number counts the
 * stations.
 * @source `netsh wlan show networks mode=bssid`, from memory
 */
export class NetshRadio {
  private signal: string | null = null;
  /** In dBm, where a line has it: it stands before the percentage. */
  private level: string | null = null;
  private channel: string | null = null;
  private band: string | null = null;
  private standard: WifiStandard = "unknown";
  private stationCount: number | null = null;
  private airtimeRatio: number | null = null;
  /** Blanks in front of the heading of the load section, while it lasts. */
  private loadIndentCount: number | null = null;

  constructor(
    private readonly line: number,
    private readonly name: string,
    private readonly address: string,
  ) {}

  /** @param isTorn the file ends within this line */
  add({ key, value, indentCount }: NetshLine, isTorn: boolean): void {
    const text = value.trim();
    const load = LOAD.exec(text);
    if (load !== null) return this.takeLoad(load, isTorn);
    if (this.isWithinLoad(indentCount)) return this.takeLoadNumber(text, isTorn);
    this.loadIndentCount = null;
    if (text === "") this.loadIndentCount = indentCount;
    else if (SIGNAL.test(text)) this.signal ??= isTorn && !/\D$/.test(text) ? null : text;
    else if (LEVEL.test(text)) this.level ??= isTorn ? null : text;
    else if (BAND.test(text)) this.band ??= text;
    else if (RADIO_TYPE.test(text)) this.takeStandard(RADIO_TYPE.exec(text)![1]!);
    else if (/^\d+$/.test(text) && !/[(（]/.test(key)) this.channel ??= isTorn ? null : text;
  }

  /** Deeper than the heading of the load section; or below it, where all blanks in front are lost. */
  private isWithinLoad(indentCount: number): boolean {
    if (this.loadIndentCount === null) return false;
    return indentCount > this.loadIndentCount || (indentCount === 0 && this.loadIndentCount === 0);
  }

  row(): OsTextRow {
    const { line, name, address, channel, band, standard, airtimeRatio, stationCount } = this;
    const signal = this.level ?? this.signal;
    return { line, name, address, signal, channel, band, standard, airtimeRatio, stationCount };
  }

  private takeStandard(letters: string): void {
    if (this.standard === "unknown") this.standard = wifiStandard(letters);
  }

  /** @source utilisation of 255: IEEE 802.11 clause 9.4.2.27; the percentage beside it is cut to whole ones */
  private takeLoad(load: RegExpExecArray, isTorn: boolean): void {
    const [busyCount, percent] = [Number(load[1]), Number(load[2] ?? load[3])];
    if (isTorn || percent > 100) return;
    this.airtimeRatio ??= busyCount <= 255 ? busyCount / 255 : percent / 100;
  }

  private takeLoadNumber(text: string, isTorn: boolean): void {
    if (/^\d{1,5}$/.test(text) && !isTorn) this.stationCount ??= Number(text);
  }
}
