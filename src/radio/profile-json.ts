import type { RadioProfile } from "./profile.js";

/**
 * A profile printed whole, as JSON that `readProfile` reads back equal. The profile itself is plain data
 * and may be put into other JSON as it is.
 * @returns text, indented by two spaces, ending in a newline
 * @example readProfile(JSON.parse(profileJson(findProfile("hop-79"))), "hop-79.json").profile.channels.length; // => 79
 */
export function profileJson(profile: RadioProfile): string {
  return `${JSON.stringify(profile, null, 2)}\n`;
}
