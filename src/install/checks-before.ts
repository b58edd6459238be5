import type { CircuitControl } from "./circuit-types.js";
import type { InstallCheck } from "./install-check.js";
import { tick } from "./install-check.js";
import type { InstallTerms } from "./install-terms.js";

const STAGE = "before";

const CONTROL_WORDS: Readonly<Record<Exclude<CircuitControl, "none">, string>> = {
  dimmer: "take its dimmer out (at full it is still a dimmer); constant power to every box.",
  "wall-switch": "lock its wall switch on or take it out; constant power to every box.",
  sensor: "take its sensor out; constant power to every box.",
  "time-clock": "take its time clock out; constant power to every box.",
  "transfer-switch": "it has a transfer switch: ask who owns it before any change.",
  unknown: "trace what controls it; a dimmer, sensor or clock comes out.",
};

/** Before anyone goes up: circuits, what controls them, emergency lighting, ratings. */
export function checksBefore({ circuits, luminaires, doNotHang }: InstallTerms): InstallCheck[] {
  return [
    ...circuits.map(({ circuit, luminaires: own }) =>
      tick(
        STAGE,
        "dead-and-locked",
        circuit,
        `Circuit ${circuit}: dead, locked off, tested dead (${listed(own)}).`,
      ),
    ),
    ...circuits.flatMap(({ circuit, control }) =>
      control === "none"
        ? []
        : [tick(STAGE, "control-out", circuit, `Circuit ${circuit}: ${CONTROL_WORDS[control]}`)],
    ),
    ...luminaires.flatMap(({ name, emergency }) =>
      emergency === "no" ? [] : [tick(STAGE, "emergency-settled", name, emergencyWords(name, emergency))],
    ),
    ...doNotHang.map((name) =>
      tick(
        STAGE,
        "rating-settled",
        name,
        `${name}: DO NOT HANG until the hang sheet has nothing against its weight and ratings.`,
      ),
    ),
  ];
}

/** Names in a sentence. */
export function listed(names: readonly string[]): string {
  return names.length === 0 ? "no luminaire" : names.join(", ");
}

function emergencyWords(name: string, emergency: "yes" | "unknown"): string {
  if (emergency === "unknown")
    return `${name}: emergency or exit lighting? UNKNOWN. Ask before it is replaced.`;
  return `${name} is emergency lighting: it reaches its emergency level with the transmitter off.`;
}
