import type { WifiNeighbour, WifiPlan } from "../venue/index.js";
import { fixed, wholePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { tableLines } from "./text-layout.js";

/** Wi-Fi channels that text shows; JSON has them all. */
const MOST_CHANNELS = 4;

/** What our transmitter does to each Wi-Fi channel, in at most eight lines. */
export function wifiNeighbourLines(
  { neighbours, apPowerDbm, radiated }: WifiPlan,
  style: TextStyle,
): string[] {
  if (neighbours === null) return ["Nothing: there is no radio channel."];
  if (neighbours.length === 0) return ["No access point was heard."];
  const hardest = [...neighbours].sort(
    (a, b) => b.strongestDbm - a.strongestDbm || a.wifiChannel - b.wifiChannel,
  );
  const shown = hardest.slice(0, MOST_CHANNELS);
  const lines = tableLines(
    [
      { head: "Wi-Fi ch", align: "right" },
      { head: "our level there", align: "right" },
      { head: "wait for us", align: "right" },
      { head: "of the time", align: "right" },
      { head: "our airtime inside it", align: "right" },
    ],
    shown.map(cells),
    style.columnCount,
  );
  const hidden = hardest.length - shown.length;
  return [
    ...lines,
    ...(hidden > 0 ? [`(and ${hidden} quieter: --json has them)`] : []),
    `Transmitter where the scan was made; access points at ${fixed(apPowerDbm, 0)} dBm (assumed).`,
    radiated?.airtimeCapped === true
      ? "They wait from -62 dBm up (802.11). Our airtime adds up to over 100 %: check it."
      : "They wait from -62 dBm in their 20 MHz up (802.11), while we send.",
  ];
}

function cells({
  wifiChannel,
  strongestDbm,
  waitingCount,
  accessPointCount,
  waitRatio,
  airtimeRatio,
}: WifiNeighbour): string[] {
  return [
    String(wifiChannel),
    `${fixed(strongestDbm, 0)} dBm`,
    `${waitingCount} of ${accessPointCount}`,
    someOfTheTime(waitRatio),
    someOfTheTime(airtimeRatio),
  ];
}

/** Whole per cent, never rounded down to nothing. */
function someOfTheTime(ratio: number): string {
  return ratio > 0 && ratio < 0.005 ? "<1 %" : wholePercent(ratio);
}
