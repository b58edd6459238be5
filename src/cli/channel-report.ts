import { fadeLawWords, pathModelWords } from "../propagation/index.js";
import type { ChannelReport } from "../report/index.js";
import { toEmitters } from "../scan/index.js";
import type { Survey } from "../scan/index.js";
import { bandProfile } from "../scorer/index.js";
import { planChannel } from "../venue/index.js";
import type { PlanChannelOptions } from "../venue/index.js";
import type { LoadedRadio } from "./load-profile.js";

/** Columns of 1.25 MHz: four to a 5 MHz raster step, a column's middle on each raster frequency, 80 with the scale. */
const PICTURE = { startMhz: 2400.125, stepMhz: 1.25, stepCount: 67 } as const;

/** Everything that the reports of `channel` and `link` tell. */
export function channelReport(
  survey: Survey,
  radio: LoadedRadio,
  setting: Omit<PlanChannelOptions, "emitters" | "profile">,
): ChannelReport {
  const emitters = toEmitters(survey);
  const { profile, bandMhz, regionWords, breachDb, issues } = radio;
  const plan = planChannel({
    ...setting,
    emitters,
    sweeps: survey.sweepLevels,
    profile,
    ...(bandMhz && { bandMhz }),
  });
  const { busyShareRatio, pathModel, fadeLaw } = plan.setting;
  return {
    plan,
    survey,
    band: bandProfile({ emitters, sweeps: survey.sweepLevels, profile, busyShareRatio, ...PICTURE }),
    pathWords: pathModelWords(pathModel),
    fadeWords: fadeLawWords(fadeLaw),
    regionWords,
    breachDb,
    issues,
  };
}
