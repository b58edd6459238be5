import { netshLine, opensNetwork, opensRadio } from "./netsh-line.js";
import type { NetshLine } from "./netsh-line.js";
import { NetshRadio } from "./netsh-radio.js";
import type { SignalRule } from "./os-text-row.js";
import { parseOsSignal, SIGNAL_EXPECTED } from "./os-text-signal.js";
import type { OsTextSink } from "./os-text-sink.js";
import type { TextLine } from "./text-lines.js";

/** `netsh` prints signals in percent. */
export const NETSH_SIGNAL: SignalRule = { expected: SIGNAL_EXPECTED, parse: parseOsSignal };

/**
 * Reads what `netsh wlan show networks mode=bssid` prints, in any language: one row a radio. A line that
 * belongs to no network (a prompt, the next adapter's name, other output) ends network and radio.
 * @source the command's output, from memory
 */
export class NetshReader {
  private network: string | null = null;
  private radio: NetshRadio | null = null;
  private isIndented = false;

  constructor(private readonly sink: OsTextSink) {}

  read({ line, text, isTorn }: TextLine): void {
    if (text.trim() === "") return;
    const parts = netshLine(text);
    if (parts === null || this.isOutside(parts)) return this.endNetwork();
    if (opensRadio(parts)) this.startRadio(parts, line);
    else if (opensNetwork(parts)) this.startNetwork(parts);
    else this.radio?.add(parts, isTorn);
  }

  finish(): void {
    const radio = this.radio;
    this.radio = null;
    if (radio !== null) this.sink.add(radio.row());
  }

  /**
   * A line at the margin where radios are indented, or a prompt. A backslash within a key may be half a
   * character of a code page (its second byte in Shift JIS).
   */
  private isOutside(parts: NetshLine): boolean {
    if (opensNetwork(parts) || opensRadio(parts)) return false;
    return /[>$#]|^\\\\/.test(parts.key) || (this.isIndented && parts.indentCount === 0);
  }

  private startNetwork({ value }: NetshLine): void {
    this.endNetwork();
    this.network = value.replace(/ $/, "");
  }

  private startRadio({ value, indentCount }: NetshLine, line: number): void {
    this.finish();
    this.isIndented = indentCount > 0;
    if (this.network === null) {
      const expected = "a radio below a line SSID with its number and its name";
      this.sink.reject({ code: "unreadable", column: "SSID", value, expected }, line);
    } else this.radio = new NetshRadio(line, this.network, value);
  }

  private endNetwork(): void {
    this.finish();
    this.network = null;
  }
}
