import { isPathModelRecord, pathModelPredictionDb } from "../commissioning/index.js";
import { antennaWords, fadeLawWords, pathModelWords } from "../propagation/index.js";
import type { ChannelReport } from "../report/index.js";
import { toEmitters } from "../scan/index.js";
import type { Survey } from "../scan/index.js";
import { bandProfile } from "../scorer/index.js";
import type { OverlapCache } from "../scorer/index.js";
import { planChannel, planWifi } from "../venue/index.js";
import type { PlanChannelOptions } from "../venue/index.js";
import { BAND_GRID } from "./band-grid.js";
import type { LoadedRadio } from "./load-profile.js";
import { buildingIdsOf } from "./wifi-options.js";

/**
 * Everything that the reports of `channel` and `link` tell.
 * @param wifi what is known of access points; not given: the report leaves Wi-Fi's side out
 */
export function channelReport(
  survey: Survey,
  radio: LoadedRadio,
  setting: Omit<PlanChannelOptions, "emitters" | "profile">,
  wifi?: { readonly apPowerDbm?: number },
): ChannelReport {
  const { profile, bandMhz, regionWords, breachDb, regulation, issues } = radio;
  const scene = {
    emitters: toEmitters(survey),
    sweeps: survey.sweepLevels,
    overlapCache: new Map() as OverlapCache,
    buildingIds: buildingIdsOf(survey),
  };
  const plan = planChannel({ ...setting, ...scene, profile, ...(bandMhz && { bandMhz }) });
  const { busyShareRatio, pathModel, fadeLaw, site } = plan.setting;
  return {
    plan,
    survey,
    band: bandProfile({ ...scene, profile, busyShareRatio, ...BAND_GRID }),
    wifi: wifi === undefined ? null : planWifi(plan, scene, wifi.apPowerDbm),
    pathWords: pathModelWords(pathModel),
    predictAt: isPathModelRecord(pathModel)
      ? (distanceM) => pathModelPredictionDb(pathModel, distanceM)
      : null,
    antennaWords: {
      tx: site.txAntenna === null ? null : antennaWords(site.txAntenna),
      rx: site.rxAntenna === null ? null : antennaWords(site.rxAntenna),
    },
    fadeWords: fadeLawWords(fadeLaw),
    regionWords,
    breachDb,
    regulation,
    issues,
  };
}
