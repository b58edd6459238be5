import { ArgumentError } from "../issues/index.js";
import type { RadioChannel } from "../radio/index.js";
import type { VenueSystem } from "./venue-system.js";

/**
 * The radio channels that a system may use, in its profile's order.
 * @throws {ArgumentError} when there is none
 */
export function usableChannels({
  profile,
  allowedChannels,
}: Pick<VenueSystem, "profile" | "allowedChannels">): readonly RadioChannel[] {
  const usable = profile.channels.filter(({ channel }) => allowedChannels?.includes(channel) ?? true);
  if (usable.length > 0) return usable;
  throw new ArgumentError("allowedChannels", "a channel of the profile", allowedChannels?.join(", "));
}
