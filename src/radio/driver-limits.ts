/**
 * One row: band edges MHz, most bandwidth MHz, most EIRP dBm, flags joined by `|`, country codes joined by blanks
 * (`00`: anywhere).
 */
export type DriverRow = readonly [
  lowMhz: number,
  highMhz: number,
  mostBandwidthMhz: number,
  maxEirpDbm: number,
  flags: string,
  countries: string,
];

/** Where the rows come from. */
export const DRIVER_TABLE_SOURCE = "wireless-regdb 2026.05.30";

/**
 * What general wireless drivers may do between 2400 and 2500 MHz, by country: every rule of the open
 * regulatory database that touches the band, countries of equal rules in one row. No legal text: it is made
 * for IEEE 802.11 drivers and knows nothing of other modulations or of antenna rules.
 * @source wireless-regdb 2026.05.30 (Debian 12), decoded from its binary
 */
export const driverRows: readonly DriverRow[] = [
  [2402, 2472, 40, 20, "", "00"],
  [2457, 2482, 20, 20, "NO-IR|AUTO-BW", "00"],
  [2474, 2494, 20, 20, "NO-OFDM|NO-IR", "00"],
  [
    2400,
    2483.5,
    40,
    20,
    "",
    "AD AL AM AT BA BE BG BH BW CH CN CY CZ DE DK EE ES FI FO FR GB GI GR HR HU IE IL IM IR IS IT JO KW KZ LI LT LU LV MC MD ME MK MT MV NA NL NO PH PL PT RO RS RU SE SI SK SM SX TR TZ VA",
  ],
  [
    2402,
    2482,
    40,
    20,
    "",
    "AE AF AI AN AR AW AZ BB BD BF BL BO BS BT BY CF CI CL CO CX DZ ET GE GF GH GL GP HN JM JP KH KN LB LC LS MA MF MN MQ MR MU MW MX NG NP PE PF PG PM PY RE RW SA SN SR SV TC TD TH TN TT UG UY UZ VC VU WF WS YE YT ZA ZW",
  ],
  [2402, 2472, 40, 30, "", "AS BM DM DO FM GD GU HT MH MP NI PR PW VI"],
  [2400, 2483.5, 40, 36.02, "", "AU CA"],
  [2400, 2483.5, 40, 23.01, "", "BN CU LK MO SG VN"],
  [2400, 2483.5, 40, 30, "", "BR EC KY TW"],
  [2402, 2482, 40, 30, "", "BZ GY IN VE"],
  [2402, 2482, 40, 36, "", "CR"],
  [2402, 2483.5, 40, 20, "NO-OUTDOOR", "EG"],
  [2400, 2483.5, 40, 26.98, "", "GT"],
  [2400, 2483.5, 40, 36, "", "HK NZ PA"],
  [2400, 2483.5, 40, 26.98, "NO-OUTDOOR", "ID"],
  [2474, 2494, 20, 20, "NO-OFDM", "JP"],
  [2400, 2483.5, 40, 33.01, "", "KE"],
  [2402, 2482, 20, 20, "", "KP"],
  [2400, 2483.5, 40, 23, "", "KR"],
  [2400, 2500, 40, 26.98, "", "MY"],
  [2400, 2483.5, 40, 20, "NO-OUTDOOR", "OM QA SY UA"],
  [2400, 2500, 40, 30, "", "PK"],
  [2400, 2483.5, 40, 20, "DFS", "TG"],
  [2400, 2472, 40, 30, "", "US"],
];
