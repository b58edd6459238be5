import type { CircuitFlag } from "./circuit-types.js";
import { RATING_NOT_GIVEN } from "./hang-load.js";
import type { HangFlag } from "./hang-sheet-types.js";

/** What each flag of the hang sheet says. */
export const HANG_FLAG_WORDS: Readonly<Record<HangFlag, string>> = {
  "rating-not-given": RATING_NOT_GIVEN,
  "beyond-rating": "BEYOND THE RATING TYPED IN: DO NOT HANG",
  "weight-not-given": "WEIGHT NOT GIVEN: DO NOT HANG",
  "beyond-box-limit":
    "above 50 lb (23 kg): not from the box unless it is listed for it (NEC 314.27, from memory; local code decides)",
  "swivel-canopy": "slope over 5°: needs a swivel canopy (common practice)",
  "slope-unknown": "slope not given: over 5° it needs a swivel canopy (common practice)",
  uneven: "uneven to the eye within its row",
  "below-trim": "hangs below trim",
  emergency: "EMERGENCY OR EXIT LIGHTING: must not depend on the radio link",
  "emergency-unknown": "EMERGENCY LIGHTING? UNKNOWN: ask before it is replaced",
};

/** What each flag of the circuit sheet says. */
export const CIRCUIT_FLAG_WORDS: Readonly<Record<CircuitFlag, string>> = {
  dimmer: "ON A DIMMER: take the dimmer out before install; at full it is still a dimmer",
  "wall-switch": "on a wall switch: needs constant power; lock it on or take it out",
  sensor: "on a sensor: needs constant power; take the sensor out",
  "time-clock": "on a time clock: needs constant power; take the clock out",
  "transfer-switch": "on a transfer switch: emergency supply? ask who owns it before any change",
  "control-unknown": "what controls it? unknown: trace it before install",
  "beyond-breaker": "load with its continuous factor is beyond the breaker typed in",
  "beyond-drivers": "more drivers than the maker's inrush table allows on this breaker",
  "beyond-drop": "no size in the table keeps the voltage drop within its limit",
  "no-earth": "NO EARTH: earth is needed before a metal luminaire goes up",
  "shared-neutral": "shared neutral: lock off every circuit that shares it, and load it by local code",
  "ask-watts": "watts not given for all of its luminaires: ask",
  "ask-supply": "voltage not given: ask",
  "ask-breaker": "breaker not given: no conductor is chosen without it",
  "ask-continuous-factor": "continuous-load factor not given: 1 taken; ask by local code",
  "ask-feed": "own box or through-fed? unknown: taken as through-fed",
  "ask-feed-length": "cord lengths not given: voltage drop not judged",
  "ask-inrush": "how many of these drivers on this breaker? the maker's inrush table says",
  "ask-earth": "earth continuity not tested: ask",
  "ask-shared-neutral": "is the neutral shared with another circuit? ask",
};
