import type { Issue } from "../../issues/index.js";
import { builtInProfiles, readProfile } from "../../radio/index.js";
import type { ProfileImport, RadioProfile } from "../../radio/index.js";
import type { FileSpot } from "./file-spot.js";
import { isMapping } from "./file-spot.js";
import { nearHint } from "./near-hint.js";

/** Gives the plain data of a profile file by the name that the venue file has for it; undefined: no such file. */
export type ProfileOf = (file: string) => unknown;

/** What a system's file says of its radio. */
export interface ProfilePart {
  readonly profile: string | null;
  readonly set: Readonly<Record<string, unknown>> | null;
}

/**
 * The radio of a system: a built-in profile or a file, with the system's own figures.
 * @param told takes the profile's issues that stop nothing
 */
export function readSystemProfile(
  { profile: given, set }: ProfilePart,
  spot: FileSpot,
  profileOf: ProfileOf,
  told: Issue[],
): RadioProfile | undefined {
  const name = given ?? "raster-13";
  const builtIn = builtInProfiles.find((profile) => profile.name === name);
  const own = Object.fromEntries(Object.entries(set ?? {}).map(([key, raw]) => [camelCase(key), raw]));
  if (builtIn !== undefined && Object.keys(own).length === 0) return builtIn;
  const data = builtIn === undefined ? profileOf(name) : { basedOn: name };
  if (data === undefined) {
    const names = builtInProfiles.map((profile) => profile.name);
    return spot
      .key("profile")
      .error(name, `${names.join(", ")} or a file that is there${nearHint(name, names)}`, "unreadable");
  }
  const whole = isMapping(data) ? { ...without(data, own), ...own } : data;
  const read = readProfile(whole, name);
  tellFaults(read, set ?? {}, spot, told);
  if (read.profile === null) return undefined;
  const saysOwn = isMapping(data) && data["generic"] === false;
  return {
    ...read.profile,
    name: named(builtIn?.name ?? read.profile.name, Object.keys(set ?? {})),
    generic: !saysOwn && isMostlyGeneric(read.profile),
  };
}

/** A profile's name, saying which figures are the system's own. */
function named(name: string, keys: readonly string[]): string {
  if (keys.length === 0) return name;
  return `${name} with ${keys.length > 2 ? `${keys.length} figures` : keys.join(" and ")} set`;
}

/** Generic figures until more than half of them are the user's. */
function isMostlyGeneric(profile: RadioProfile): boolean {
  const statuses = Object.values(profile as unknown as Readonly<Record<string, unknown>>).flatMap((part) =>
    isMapping(part) && "value" in part && "status" in part ? [part["status"]] : [],
  );
  return statuses.filter((status) => status === "yours").length <= statuses.length / 2;
}

/** The data without what the own figures replace, however spelt; an enclosure replaces its loss too. */
function without(
  data: Readonly<Record<string, unknown>>,
  own: Readonly<Record<string, unknown>>,
): Record<string, unknown> {
  const replaced = new Set([...Object.keys(own), ...("enclosure" in own ? ["enclosureLossDb"] : [])]);
  return Object.fromEntries(Object.entries(data).filter(([key]) => !replaced.has(camelCase(key))));
}

/** Faults of the own figures are told where they stand, those of a profile file as the file's. */
function tellFaults(
  { issues, profile }: ProfileImport,
  set: Readonly<Record<string, unknown>>,
  spot: FileSpot,
  told: Issue[],
): void {
  for (const issue of issues) {
    const root = issue.column?.split(/[.[]/)[0] ?? "";
    const key = Object.keys(set).find((each) => each === root || camelCase(each) === root);
    if (key === undefined) told.push(issue);
    else if (issue.severity === "error") spot.key("set").key(key).error(set[key], issue.expected, issue.code);
    else spot.key("set").key(key).warn(issue.expected, issue.code);
  }
  if (profile === null && issues.length === 0) spot.key("profile").error(undefined, "a profile");
}

function camelCase(key: string): string {
  return key.replaceAll(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}
