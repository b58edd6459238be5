/** A text that an operating system's own command prints for a Wi-Fi scan. */
export type OsTextFormat =
  | "linux-iw-scan"
  | "linux-nmcli-terse"
  | "linux-nmcli-table"
  | "linux-nmcli-multiline"
  | "linux-wpa-cli"
  | "windows-netsh";

/** The command that prints each, as it is typed. */
export const OS_TEXT_COMMANDS: Readonly<Record<OsTextFormat, string>> = {
  "linux-iw-scan": "iw dev <interface> scan",
  "linux-nmcli-terse": "nmcli -t",
  "linux-nmcli-table": "nmcli device wifi list",
  "linux-nmcli-multiline": "nmcli -m multiline",
  "linux-wpa-cli": "wpa_cli scan_results",
  "windows-netsh": "netsh wlan show networks mode=bssid",
};
