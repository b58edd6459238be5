import { printable } from "../issues/index.js";
import type { Antenna } from "../propagation/index.js";
import type { Survey } from "../scan/index.js";
import type { BudgetMend, HurtLine, ReceiverLink, SystemLinks } from "../venue/index.js";
import { sourceName } from "./channel-tables.js";
import { dB, fixed } from "./number-format.js";
import type { LengthUnit } from "./pen.js";
import { planLength } from "./place-words.js";

/** A line of the budget in a word or two. */
export const HURT_WORDS: Readonly<Record<HurtLine, string>> = {
  feeder: "feeder",
  "tx-antenna": "tx antenna aside",
  distance: "distance",
  path: "path",
  floors: "floors",
  walls: "walls",
  canopy: "canopy",
  audience: "audience",
  polarisation: "polarisation",
  "rx-antenna": "rx antenna aside",
  interference: "interference",
  "no-sight": "hidden",
};

/** What hurts most and by how much; "nothing" where no line takes more than the ideal. */
export function hurtWords({ hurts: [most] }: ReceiverLink): string {
  if (most === undefined) return "nothing";
  return `${HURT_WORDS[most.line]} ${most.lossDb === null ? "all" : dB(most.lossDb)}`;
}

/** What would mend it and what that brings, in a few words; in whole dB, never flattered, where asked for. */
export function mendWords(
  mend: BudgetMend,
  words: (antenna: Antenna) => string,
  unit: LengthUnit,
  figures: "tenths" | "whole" = "tenths",
): string {
  const { helpDb } = mend;
  const whole = figures === "whole";
  const help =
    helpDb === null
      ? "brings a signal"
      : whole && helpDb < 1
        ? "under 1 dB"
        : `+${fixed(whole ? Math.floor(helpDb + 1e-9) : helpDb, whole ? 0 : 1)} dB`;
  return `${mendName(mend, words, unit, whole)} ${help}`;
}

/** Who is loudest in a receiver's channel, short enough for a table. */
export function loudestWords(
  {
    judged: {
      contributors: [loudest],
    },
  }: ReceiverLink,
  survey: Survey,
): string {
  if (loudest === undefined) return "nothing above noise";
  const source = survey.emitters.find(({ emitter }) => emitter === loudest.emitter);
  // The crowd's handsets go by room, Wi-Fi channel and part: here the room is enough.
  const name = source === undefined ? printable(loudest.emitter.split(",")[0]!, 40) : sourceName(source);
  return source === undefined ? name : `Wi-Fi ${source.channel} ${name}`;
}

function mendName(
  { code, heightM, channel, transmitter }: BudgetMend,
  words: (antenna: Antenna) => string,
  unit: LengthUnit,
  inFull: boolean,
): string {
  const up = heightM === null ? "" : `${planLength(heightM, unit)} ${unit}`;
  switch (code) {
    case "raise-transmitter":
      return `raised to ${up}`;
    case "other-channel":
      return `radio ch ${channel}`;
    case "other-antenna":
      return transmitter.antenna === null ? "another antenna" : kindWord(words(transmitter.antenna));
    case "second-transmitter":
      return `${inFull ? "second transmitter" : "2nd"} at ${printable(transmitter.name, 20)}`;
    case "antenna-out":
      return "antenna out";
  }
}

/** Of an antenna in words, what it is. */
function kindWord(words: string): string {
  const [kind] = words.split(",") as [string];
  return kind;
}

/** `radio ch 3 (2422 MHz)`, or how a hopping radio is judged. */
export function channelWords({ channel, centreMhz, system }: SystemLinks): string {
  if (channel !== null) return `radio ch ${channel} (${centreMhz} MHz)`;
  return system.profile.hopping === null ? "no radio channel" : "each receiver's middle hop frequency";
}

/** What limits a link, short enough for a table. */
export function limitWord({ judged }: ReceiverLink): string {
  return judged.budget.limit === "range" ? "range" : "interf.";
}
