import type { KeepOutCode } from "../venue/index.js";
import type { LengthUnit } from "./pen.js";

const BREAKS: Readonly<Record<KeepOutCode, Readonly<Record<LengthUnit, string>>>> = {
  "near-access-point": {
    m: "within 3 m of a Wi-Fi radio: each deafens the other",
    ft: "within 10 ft of a Wi-Fi radio: each deafens the other",
  },
  "near-transmitter": {
    m: "within 2 m of another system's transmitter",
    ft: "within 7 ft of another system's transmitter",
  },
  "under-luminaire": { m: "straight under a fixture", ft: "straight under a fixture" },
  "too-low": { m: "below 3 m: a crowd's bodies absorb", ft: "below 10 ft: a crowd's bodies absorb" },
};

/** The rules of antenna practice that a place breaks, in words; null where it keeps them all. */
export function breakWords(breaks: readonly KeepOutCode[], unit: LengthUnit): string | null {
  return breaks.length === 0 ? null : breaks.map((code) => BREAKS[code][unit]).join("; ");
}

const IN_BRIEF: Readonly<Record<KeepOutCode, string>> = {
  "near-access-point": "too near a Wi-Fi radio",
  "near-transmitter": "too near another transmitter",
  "under-luminaire": "straight under a fixture",
  "too-low": "too low",
};

/** The same in a few words. */
export function breakInBrief(breaks: readonly KeepOutCode[]): string | null {
  return breaks.length === 0 ? null : breaks.map((code) => IN_BRIEF[code]).join(", ");
}
