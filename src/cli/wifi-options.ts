import type { Survey } from "../scan/index.js";
import { numberWord } from "./words.js";
import type { NumberSpec } from "./words.js";

/** The options that tell of access points. */
export interface WifiOptions {
  readonly apPowerDbm?: string;
}

const AP_POWER: NumberSpec = {
  lowest: -10,
  highest: 36,
  expected: "an access point's power at its antenna connector in dBm, -10 to 36",
  example: "18",
};

/** What the options say of access points; what they don't say is left to the planner. */
export function wifiSetting({ apPowerDbm }: WifiOptions): { readonly apPowerDbm?: number } {
  return apPowerDbm === undefined ? {} : { apPowerDbm: numberWord("--ap-power-dbm", apPowerDbm, AP_POWER) };
}

/** The ids of the building's own sources. */
export function buildingIdsOf({ emitters }: Survey): ReadonlySet<string> {
  return new Set(emitters.flatMap(({ emitter, owner }) => (owner === "building" ? [emitter] : [])));
}
