import { builtInProfiles, readProfile } from "../radio/index.js";
import type { RadioProfile } from "../radio/index.js";
import { camelCase, isFigure } from "./radio-figures.js";

type Data = Readonly<Record<string, unknown>>;

/**
 * A figure whose value was changed in what `profiles NAME --json` or `--template` printed, its status and
 * source left standing, is the user's own: they told of the old value. So are channels that were changed.
 */
export function withEditsMarked(data: Data): Record<string, unknown> {
  const channelsEdited = hasEditedChannels(data);
  return Object.fromEntries(
    Object.entries(data)
      .filter(([key]) => !(channelsEdited && camelCase(key) === "channelsOrigin"))
      .map(([key, part]) => [key, marked(camelCase(key), part)]),
  );
}

function marked(key: string, part: unknown): unknown {
  if (key === "hopping" && isData(part))
    return Object.fromEntries(
      Object.entries(part).map(([inner, value]) => [
        inner,
        isEdited(value, (profile) => profile.hopping?.leastHopCount) ? { value: value.value } : value,
      ]),
    );
  const edited = isEdited(part, (profile) => profile[key as keyof RadioProfile], key);
  return edited ? { value: part.value } : part;
}

/** @param figureOf the figure that a built-in profile has in this place @param key of a figure whose value has several forms */
function isEdited(
  part: unknown,
  figureOf: (profile: RadioProfile) => unknown,
  key?: string,
): part is { readonly value: unknown } {
  if (!isFigure(part) || part.status === "yours") return false;
  const printed = builtInProfiles
    .map(figureOf)
    .filter(isFigure)
    .filter(({ status, source }) => status === part.status && source === part.source);
  const value = JSON.stringify(key === undefined ? part.value : plainValue(key, part.value));
  return printed.length > 0 && printed.every((figure) => JSON.stringify(figure.value) !== value);
}

/** A value in the form that profiles hold it in: steps of a shape as its points. */
function plainValue(key: string, value: unknown): unknown {
  if (!isData(value)) return value;
  const { profile } = readProfile({ basedOn: builtInProfiles[0]!.name, [key]: value }, key);
  const figure = profile?.[key as keyof RadioProfile];
  return isFigure(figure) ? figure.value : value;
}

function hasEditedChannels(data: Data): boolean {
  const parts = new Map(Object.entries(data).map(([key, part]) => [camelCase(key), part]));
  const [channels, origin] = [parts.get("channels"), parts.get("channelsOrigin")];
  if (channels === undefined || !isData(origin)) return false;
  const { profile } = readProfile({ basedOn: builtInProfiles[0]!.name, channels }, "channels");
  const printed = builtInProfiles.filter(
    ({ channelsOrigin: { status, source } }) => origin["status"] === status && origin["source"] === source,
  );
  if (profile === null || printed.length === 0) return false;
  const text = JSON.stringify(profile.channels);
  return printed.every((builtIn) => JSON.stringify(builtIn.channels) !== text);
}

function isData(part: unknown): part is Data {
  return typeof part === "object" && part !== null && !Array.isArray(part);
}
