import type { Circuit } from "../../install/index.js";
import type { Field } from "./field.js";
import { refined } from "./field.js";
import type { Entry } from "./field-list.js";
import { mapping } from "./field-mapping.js";
import { figure, text, whole, word } from "./field-values.js";
import { toldTwice } from "./venue-scope.js";
import { yesNo } from "./yes-no-field.js";

/** A circuit as the electrician knows it; what is left out is unknown, and asked for. */
export const circuitField: Field<Circuit & { readonly name: string }> = refined(
  mapping(
    "a circuit that feeds luminaires",
    { name: text("name of the circuit, as the luminaires have it") },
    {
      supply_v: figure("its voltage, V", [1, 1000]),
      breaker_a: figure("its breaker, A", [0.1, 1000]),
      control: word("what stands between breaker and luminaires", [
        ...(["none", "dimmer", "wall-switch", "sensor"] as const),
        ...(["time-clock", "transfer-switch", "unknown"] as const),
      ]),
      feed: word("each luminaire from its own box, or through-fed in the order of their rows", [
        ...(["own-box", "through-fed", "unknown"] as const),
      ]),
      earth: yesNo("is earth continuity tested?", "earth"),
      shared_neutral: yesNo("does it share its neutral with another circuit?", "shared_neutral"),
      upstream_drop_v: figure("lost between panel and the first box, V", [0, 100]),
      drivers_allowed: whole("drivers that the maker's inrush table allows on such a breaker", [0, 10_000]),
    },
  ),
  (part) => ({
    name: part.name,
    circuit: part.name,
    ...(part.supply_v !== null && { supplyV: part.supply_v }),
    ...(part.breaker_a !== null && { breakerA: part.breaker_a }),
    ...(part.control !== null && { control: part.control }),
    ...(part.feed !== null && { feed: part.feed }),
    ...(part.earth !== null && { earth: part.earth }),
    ...(part.shared_neutral !== null && { sharedNeutral: part.shared_neutral }),
    ...(part.upstream_drop_v !== null && { upstreamDropV: part.upstream_drop_v }),
    ...(part.drivers_allowed !== null && { mostDriversCount: part.drivers_allowed }),
  }),
);

/** Circuits in the file's order; one that nobody's row names stands there by mistake. */
export function readCircuits(
  given: readonly Entry<Circuit & { readonly name: string }>[],
  fed: readonly (string | null)[],
): readonly Circuit[] {
  toldTwice(given, "circuit");
  return given.map(({ value: { name, ...circuit }, spot }) => {
    if (!fed.includes(name)) spot.key("name").warn(`no luminaire is on circuit ${name}`);
    return circuit;
  });
}
