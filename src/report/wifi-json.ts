import type { SurveyEmitter } from "../scan/index.js";
import type { WifiFix, WifiNeighbour, WifiPlan } from "../venue/index.js";
import type { ChannelReport } from "./channel-report.js";
import { finite } from "./link-block.js";

/** The keys of `channel --json` that are about Wi-Fi: what its moves do to us, what to ask, what we do to it. */
export function wifiBlocks(report: ChannelReport): object {
  const { wifi, plan } = report;
  if (wifi === null) return { wifiMoves: null, request: null, neighbours: null };
  return {
    wifiMoves: movesBlock(wifi, report),
    request: requestBlock(wifi, report),
    neighbours: neighboursBlock(wifi),
    ...(wifi.radiated === null && { wifiReason: plan.recommended.reason }),
  };
}

function movesBlock({ moves, request }: WifiPlan, report: ChannelReport): object {
  const { movingIds, hopSetIfWifiMovesDb, survivor, reason, recommendedHolds } = moves;
  return {
    buildingCount: movingIds.length,
    ...finite({ hopSetIfWifiMovesDb }),
    survivor,
    reason,
    recommendedHolds,
    sweepsStay: report.survey.sweep !== null,
    fix: fixes(request?.fixes ?? [], report),
  };
}

function fixes(list: readonly WifiFix[], { survey }: ChannelReport): object[] {
  const sources = new Map(survey.emitters.map((source) => [source.emitter, source]));
  return list.map(({ emitter, wifiChannel, scannedWifiChannel, marginIfMovedDb }) => {
    const source: SurveyEmitter | undefined = sources.get(emitter);
    return {
      emitter,
      names: source?.names ?? [],
      wifiChannel,
      scannedWifiChannel,
      place: source?.levelPlace ?? "",
      levelDbm: source?.levelDbm ?? null,
      marginIfMovedDb,
    };
  });
}

function requestBlock({ request, radiated }: WifiPlan, report: ChannelReport): object | null {
  if (request === null || radiated === null) return null;
  const { centresMhz, bandwidthMhz, eirpDbm, airtimeRatio, airtimeCapped } = radiated;
  return {
    channel: report.plan.recommended.channel,
    fix: fixes(request.fixes, report),
    widthMhz: 20,
    automaticChannel: false,
    automaticPower: false,
    marginIfGrantedDb: request.marginIfGrantedDb,
    reason: request.marginIfGrantedDb === null ? "no wanted signal arrives" : null,
    radiates: { centresMhz, bandwidthMhz, eirpDbm, airtimeRatio, airtimeCapped, hours: "event" },
  };
}

function neighboursBlock({ neighbours, radiated, apPowerDbm }: WifiPlan): object | null {
  if (neighbours === null || radiated === null) return null;
  const { eirpDbm, airtimeRatio, airtimeCapped } = radiated;
  const channels = neighbours.map((one: WifiNeighbour) => ({
    ...one,
    strongestDbm: Number.isFinite(one.strongestDbm) ? one.strongestDbm : null,
    reason: Number.isFinite(one.strongestDbm) ? null : "none of our spectrum falls into its 20 MHz",
  }));
  return { apPowerDbm, ccaEnergyDbm: -62, eirpDbm, airtimeRatio, airtimeCapped, channels };
}
