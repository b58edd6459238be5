import { ArgumentError } from "../issues/index.js";
import { nearestWord } from "./nearest-word.js";
import type { RadioProfile } from "./profile.js";
import { hop79, hop79Avoid } from "./profiles/hop-79.js";
import { raster13 } from "./profiles/raster-13.js";
import { raster16 } from "./profiles/raster-16.js";

/** The generic profiles, the default first. No maker's figures: enter your radio's own. */
export const builtInProfiles: readonly RadioProfile[] = [raster13, raster16, hop79, hop79Avoid];

/**
 * A built-in profile by its name.
 * @param name of a built-in profile
 * @throws {ArgumentError} for an unknown name; the nearest known one is suggested
 * @example findProfile("raster-13").channels[5]; // => { channel: 6, centreMhz: 2437 }
 */
export function findProfile(name: string): RadioProfile {
  const found = builtInProfiles.find((profile) => profile.name === name);
  if (found !== undefined) return found;
  const names = builtInProfiles.map((profile) => profile.name);
  const near = nearestWord(name, names);
  const hint = near === null ? "" : ` (did you mean ${near}?)`;
  throw new ArgumentError("name", `one of ${names.join(", ")}${hint}`, name);
}
