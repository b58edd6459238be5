/** Header of the scan CSV. */
export const HEADER =
  "time,place,crowd,bssid,ssid,channel,centre_mhz,width_mhz,signal_dbm,airtime_ratio,stations,standard";

/** A scan CSV of rows given cell by cell; what is left out is blank. */
export interface Row {
  readonly time?: string;
  readonly place?: string;
  readonly crowd?: string;
  readonly bssid?: string;
  readonly ssid?: string;
  readonly channel?: number | string;
  readonly centre?: number | string;
  readonly width?: number | string;
  readonly signal?: number | string;
  readonly airtime?: number | string;
  readonly stations?: number | string;
  readonly standard?: string;
}

export function scanCsv(rows: readonly Row[]): string {
  return `${[HEADER, ...rows.map(line)].join("\n")}\n`;
}

function line(row: Row): string {
  const { time, place, crowd, bssid, ssid, channel, centre, width, signal, airtime, stations, standard } =
    row;
  return [time, place, crowd, bssid, ssid, channel, centre, width, signal, airtime, stations, standard]
    .map((cell) => `"${String(cell ?? "").replaceAll('"', '""')}"`)
    .join(",");
}
