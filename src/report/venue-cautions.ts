import { printable } from "../issues/index.js";
import type { Venue } from "../venue/index.js";
import { RADIO_CAUTIONS } from "./assumptions.js";

/** Names that are listed before the rest is counted. */
const MOST_NAMES = 12;

/** The cautions of a venue's plan: beside the usual ones, whose light may have to burn without the radio. */
export function venueCautions({ luminaires }: Pick<Venue, "luminaires">): string[] {
  const named = (answer: "yes" | "unknown"): string[] =>
    luminaires.filter(({ emergency }) => emergency === answer).map(({ name }) => printable(name, 40));
  const [counting, unknown] = [named("yes"), named("unknown")];
  return [
    ...RADIO_CAUTIONS,
    ...(counting.length === 0
      ? []
      : [`COUNT as emergency or exit lighting, not to be left to this link: ${listed(counting)}.`]),
    ...(unknown.length === 0
      ? []
      : [`NOT KNOWN whether emergency or exit lighting: ${listed(unknown)}. Ask first.`]),
  ];
}

function listed(names: readonly string[]): string {
  const shown = names.slice(0, MOST_NAMES).join(", ");
  const moreCount = names.length - MOST_NAMES;
  return moreCount > 0 ? `${shown} and ${moreCount} more` : shown;
}
