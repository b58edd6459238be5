import { builtInProfiles } from "../radio/index.js";
import type { Figure, RadioProfile } from "../radio/index.js";

/** Names of a profile's figures: all that `--set` may set. */
export const figureNames: readonly string[] = Object.entries(builtInProfiles[0]!)
  .filter(([, part]) => isFigure(part))
  .map(([name]) => name);

/** A figure with its origin, as against a profile's name, channels and the like? */
export function isFigure(part: unknown): part is Figure<unknown> {
  return typeof part === "object" && part !== null && "value" in part && "status" in part && "source" in part;
}

/** The figures of a profile, by name. */
export function figuresOf(profile: RadioProfile): (readonly [name: string, figure: Figure<unknown>])[] {
  return Object.entries(profile).filter((entry): entry is [string, Figure<unknown>] => isFigure(entry[1]));
}

/** `tx_power_dbm` → `txPowerDbm`: a profile may be written either way. */
export function camelCase(name: string): string {
  return name.replaceAll(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}

/** `txPowerDbm` → `tx_power_dbm`, as it is typed. */
export function snakeCase(name: string): string {
  return name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}
