import { checksBefore } from "./checks-before.js";
import { checksGround } from "./checks-ground.js";
import { checksHandover, checksLift, checksRoom } from "./checks-up.js";
import type { InstallCheck } from "./install-check.js";
import type { InstallTerms } from "./install-terms.js";

/**
 * The checklist of install day for this venue, in the order of the work: before, on the ground, on the lift, with
 * the room up, at handover. Blanks are columns of a readings file. Names stand as the venue file has them: whoever
 * prints them makes them printable.
 * @param terms the venue's systems, receivers, luminaires and circuits
 * @source the last wired device is terminated with 120 Ω: ANSI E1.11, from memory; the rest is common practice
 * @example
 * const system = { name: "loft", channel: { channel: 6, centreMhz: 2437 }, fallback: null };
 * const systems = [{ ...system, receiversFollow: "no", relinkS: null }];
 * const checks = installChecks({ systems, receivers: [], luminaires: [], circuits: [], doNotHang: [] });
 * checks[0].parts; // => ["Transmitter of loft: radio ch 6 (2437 MHz), fallback radio ch ____."]
 */
export function installChecks(terms: InstallTerms): InstallCheck[] {
  return [
    ...checksBefore(terms),
    ...checksGround(terms),
    ...checksLift(terms),
    ...checksRoom(terms),
    ...checksHandover(),
  ];
}
