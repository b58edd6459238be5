/**
 * Prints looks at the air in the form that Linux prints for `iw dev wlan0 scan`
 * (fields and their order: iw scan.c output format, read; element details that no reader needs: from memory).
 */

/**
 * @param blocks one per network: bssid, ssid, zeroedName (hide a name as zero bytes), channel, primaryMhz,
 *   centreMhz, secondary ("none", "above", "below"), signalDbm, busyRatio (in 1/255, null: no BSS Load),
 *   stations, standard, associated, upMs (since the network's radio started), ageMs
 * @returns {string} the text, tab-indented, one line feed a line
 */
export function iwScanText(blocks) {
  return blocks.map((block, index) => `${blockLines(block, index).join("\n")}\n`).join("");
}

function blockLines(block, index) {
  const { bssid, primaryMhz, channel, signalDbm, ageMs, standard, associated } = block;
  const modern = standard !== "b";
  return [
    `BSS ${bssid}(on wlan0)${associated ? " -- associated" : ""}`,
    `\tlast seen: ${(5231.174 + 0.0371 * index - ageMs / 1000).toFixed(3)}s [boottime]`,
    `\tTSF: ${block.upMs * 1000} usec (${upText(block.upMs)})`,
    `\tfreq: ${primaryMhz}.0`,
    "\tbeacon interval: 100 TUs",
    `\tcapability: ${modern ? "ESS Privacy ShortSlotTime (0x0411)" : "ESS (0x0001)"}`,
    `\tsignal: ${signalDbm}.00 dBm`,
    `\tlast seen: ${ageMs} ms ago`,
    "\tInformation elements from Probe Response frame:",
    `\tSSID: ${block.ssid === "" && block.zeroedName ? "\\x00".repeat(9) : escapedName(block.ssid)}`,
    ...rateLines(standard, channel),
    ...(channel > 14 ? [] : [`\tDS Parameter set: channel ${channel}`]),
    ...(block.busyRatio === null ? [] : loadLines(block)),
    ...(modern ? htLines(block) : []),
    ...(channel > 14 ? vhtLines(block) : []),
    ...(standard === "ax" ? heLines(channel) : []),
    ...(modern ? ["\tWMM:\t * Parameter version 1", "\t\t * u-APSD"] : []),
  ];
}

function upText(upMs) {
  return `${Math.floor(upMs / 86_400_000)}d, ${new Date(upMs % 86_400_000).toISOString().slice(11, 19)}`;
}

/** A name as iw prints it: bytes that are not printable ASCII, a backslash and outer spaces as \xNN. */
function escapedName(ssid) {
  const bytes = [...Buffer.from(ssid)];
  const isPlain = (byte, index) =>
    byte === 0x20 ? index > 0 && index < bytes.length - 1 : byte > 0x20 && byte < 0x7f && byte !== 0x5c;
  const printed = (byte, index) =>
    isPlain(byte, index) ? String.fromCharCode(byte) : `\\x${byte.toString(16).padStart(2, "0")}`;
  return bytes.map(printed).join("");
}

function rateLines(standard, channel) {
  if (channel > 14) return ["\tSupported rates: 6.0* 9.0 12.0* 18.0 24.0* 36.0 48.0 54.0 "];
  if (standard === "b") return ["\tSupported rates: 1.0* 2.0* 5.5 11.0 "];
  const extended = "\tExtended supported rates: 24.0 36.0 48.0 54.0 ";
  return ["\tSupported rates: 1.0* 2.0* 5.5* 11.0* 6.0 9.0 12.0 18.0 ", extended];
}

function loadLines({ busyRatio, stations }) {
  return [
    "\tBSS Load:",
    `\t\t * station count: ${stations}`,
    `\t\t * channel utilisation: ${busyRatio}/255`,
    "\t\t * available admission capacity: 0 [*32us]",
  ];
}

function htLines({ channel, secondary }) {
  const wide = secondary !== "none";
  return [
    "\tHT capabilities:",
    `\t\tCapabilities: ${wide ? "0x1ee" : "0x1ac"}`,
    `\t\t\t${wide ? "HT20/HT40" : "HT20"}`,
    "\t\t\tStatic SM Power Save",
    "\tHT operation:",
    `\t\t * primary channel: ${channel}`,
    `\t\t * secondary channel offset: ${wide ? secondary : "no secondary"}`,
    `\t\t * STA channel width: ${wide ? "any" : "20 MHz"}`,
    "\t\t * HT protection: nonmember",
    "\t\t * non-GF present: 1",
  ];
}

function vhtLines({ centreMhz }) {
  return [
    "\tVHT capabilities:",
    "\t\tVHT Capabilities (0x0f8259b2):",
    "\t\t\tMax MPDU length: 11454",
    "\tVHT operation:",
    "\t\t * channel width: 1 (80 MHz)",
    `\t\t * center freq segment 1: ${(centreMhz - 5000) / 5}`,
    "\t\t * center freq segment 2: 0",
  ];
}

function heLines(channel) {
  return [
    "\tHE capabilities:",
    "\t\tHE MAC Capabilities (0x000801185018):",
    "\t\t\t+HTC HE Supported",
    "\t\tHE PHY Capabilities: (0x02204c89ff1b8300000c00):",
    `\t\t\t${channel > 14 ? "HE40/HE80/5GHz" : "HE40/2.4GHz"}`,
  ];
}
