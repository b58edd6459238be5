import type { WifiPlan } from "../venue/index.js";
import { radioChannelWords } from "./channel-glance.js";
import type { ChannelReport } from "./channel-report.js";
import { dB } from "./number-format.js";

/** What becomes of the ranking when access points choose other channels, one statement a line. */
export function wifiMovesLines(report: ChannelReport, wifi: WifiPlan): string[] {
  const { survey, plan } = report;
  const { movingIds } = wifi.moves;
  if (movingIds.length === 0)
    return [
      "None of the building's own Wi-Fi was heard (-75 dBm or more, or --building-wifi): nothing to move.",
    ];
  const marked = survey.emitters.filter(
    ({ owner, ownerMarked }) => ownerMarked && owner === "building",
  ).length;
  const whose = marked === 0 ? "-75 dBm or more" : `-75 dBm or more, ${marked} marked`;
  return [
    `"if moved": each of the building's ${movingIds.length} sources (${whose}) on its worst of Wi-Fi 1, 6, 11 at once; neighbours stay. Never above today's margin: they may stay too. A guest's hotspot is not the building's: --neighbour-wifi NAME.`,
    plan.hopSet === null ? survivorWords(report, wifi) : hopWords(report, wifi),
    ...(survey.sweep === null ? [] : ["What a power sweep heard can't be moved: it counts as it is."]),
  ];
}

function survivorWords({ plan }: ChannelReport, { moves }: WifiPlan): string {
  const { survivor, reason, recommendedHolds } = moves;
  if (survivor === null) return `No survivor: ${reason}. Have Wi-Fi fixed (see the request).`;
  const words = radioChannelWords(plan, survivor.channel);
  const figures = `margin ${dB(survivor.marginDb)}, if moved ${dB(survivor.ifWifiMovesDb)}`;
  if (survivor.channel === plan.recommended.channel) return `${words} survives it: ${figures}.`;
  if (recommendedHolds === true)
    return `The recommended channel survives it; of those within 3 dB, ${words} best: ${figures}.`;
  return `Where Wi-Fi can't be fixed, use ${words}, within 3 dB of the best: ${figures}.`;
}

function hopWords({ plan }: ChannelReport, { moves }: WifiPlan): string {
  const { hopSetIfWifiMovesDb, reason } = moves;
  return `Hop set: median margin ${dB(plan.hopSet!.marginDb)}, if moved ${dB(hopSetIfWifiMovesDb)}. No one channel survives: ${reason}.`;
}
