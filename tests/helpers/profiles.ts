import { findProfile } from "../../src/radio/index.js";
import type { RadioProfile } from "../../src/radio/index.js";

/** A built-in profile with some plain figures replaced; their origin stays. */
export function profileWith(
  name: string,
  figures: Partial<
    Record<
      | "requiredCiDb"
      | "noiseFigureDb"
      | "rxGainDbi"
      | "enclosureLossDb"
      | "transmissionsPerFrameCount"
      | "sensitivityDbm",
      number
    >
  >,
): RadioProfile {
  const profile = findProfile(name);
  const changed = Object.entries(figures).map(([key, value]) => [
    key,
    { value, status: "yours", source: "test" },
  ]);
  return { ...profile, ...(Object.fromEntries(changed) as Partial<RadioProfile>) };
}
