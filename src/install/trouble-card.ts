import type { InstallSystem, InstallTerms } from "./install-terms.js";
import { channelWords } from "./install-terms.js";

/** A trouble, and what to do in order. */
export interface TroubleEntry {
  readonly code:
    | "one-frozen"
    | "room-frozen"
    | "only-when-full"
    | "flicker"
    | "wrong-one-moves"
    | "after-power-cut"
    | "last-seen-good";
  readonly sign: string;
  readonly steps: readonly string[];
}

/**
 * The page for the booth: seven troubles, each with what to do in order, with the venue's own channels and names.
 * @param terms as of `installChecks`; only systems, luminaires and circuits are read
 * @example troubleCard({ systems: [], luminaires: [], circuits: [] }).length; // => 7
 */
export function troubleCard({
  systems,
  luminaires,
  circuits,
}: Pick<InstallTerms, "systems" | "luminaires" | "circuits">): TroubleEntry[] {
  const addresses = luminaires.filter(({ address }) => address !== null).length;
  const clocked = circuits.filter(({ control }) => control !== "none").map(({ circuit }) => circuit);
  return [
    ...radioTroubles(systems),
    {
      code: "flicker",
      sign: "Flicker",
      steps: [
        clocked.length === 0
          ? "Is anything on a dimmer? No luminaire may be, not even at full."
          : `Is circuit ${clocked.join(", ")} free of dimmer, sensor and clock by now?`,
        "Is the last wired device of its cable terminated with 120 Ω?",
        "Does it flicker at a steady level too? Then it is power or driver, not radio.",
      ],
    },
    {
      code: "wrong-one-moves",
      sign: "The wrong fixture moves",
      steps: [
        `Compare its address and mode with the address sheet (${addresses} of ${luminaires.length} patched).`,
        "Two at one address move together; a wrong mode moves its neighbours.",
      ],
    },
    ...afterTroubles(systems),
  ];
}

function radioTroubles(systems: readonly InstallSystem[]): TroubleEntry[] {
  return [
    {
      code: "one-frozen",
      sign: "One fixture frozen, its room fine",
      steps: [
        "Has its receiver power? Read its link light from below.",
        "Circuit off for ten seconds and on again, if the scene allows it.",
        "Else its antenna or cable: lift visit; address and mode on its label.",
      ],
    },
    {
      code: "room-frozen",
      sign: "A whole room frozen",
      steps: [
        "Console, splitter, transmitter: is each powered, does DMX reach the transmitter?",
        "Was the transmitter moved, boxed in, or its antenna knocked?",
        ...systems.map(fallbackWords),
      ],
    },
    {
      code: "only-when-full",
      sign: "Only when the house is full",
      steps: [
        "Phones and the building's Wi-Fi: ask the network contact what changed.",
        "Bring the transmitter's antenna nearer and above heads.",
        ...systems.map(fallbackWords),
        "Scan now, in the full house: no other hour shows it.",
      ],
    },
  ];
}

const FOLLOW_WORDS = {
  yes: "receivers follow by themselves",
  no: "EVERY RECEIVER NEEDS A VISIT",
  unknown: "do receivers follow? unknown: try it before the night",
};

function fallbackWords({ name, channel, fallback, hops, receiversFollow }: InstallSystem): string {
  if (hops === true) return `${name}: it hops; look for what is new on the band.`;
  if (fallback === null) return `${name}: now ${channelWords(channel)}, no fallback chosen.`;
  const words = `${name}: from ${channelWords(channel)} to ${channelWords(fallback)}`;
  return `${words}; ${FOLLOW_WORDS[receiversFollow]}.`;
}

function afterTroubles(systems: readonly InstallSystem[]): TroubleEntry[] {
  const waits = systems.map(({ name, relinkS }) =>
    relinkS === null ? `${name}: wait for its receivers (time unknown).` : `${name}: wait ${relinkS} s.`,
  );
  return [
    {
      code: "after-power-cut",
      sign: "After a power cut",
      steps: ["Transmitter first, then the circuits of the luminaires.", ...waits],
    },
    {
      code: "last-seen-good",
      sign: "Last seen good",
      steps: ["Date, hour, crowd, who, and what has changed since: ____________________"],
    },
  ];
}
