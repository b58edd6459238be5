import { requirePositive, requireWhole } from "../issues/index.js";
import { DMX_TIMING } from "./dmx-timing.js";
import { UNIVERSE_SLOT_COUNT } from "./universe.js";

/** Where a packet leaves what the standard asks of a transmitter. */
export type DmxFrameCaveat = "break-too-short" | "mark-too-short" | "break-to-break-too-long";

/** Time on the line of one DMX512 packet, break to break. */
export interface DmxFrame {
  readonly breakUs: number;
  readonly markAfterBreakUs: number;
  /** The start code and all slots. */
  readonly slotsUs: number;
  /** Mark before the next break that a short packet needs to keep the least time from break to break. */
  readonly idleUs: number;
  readonly frameUs: number;
  readonly rateHz: number;
  readonly caveats: readonly DmxFrameCaveat[];
}

/**
 * Frame time and refresh rate of DMX512: break + mark after break + 44 µs · (1 + slots), at least 1204 µs from
 * break to break; rate = 1 ÷ frame time. Slots follow each other without a gap: the fastest that may be sent.
 * @param terms slotCount, slots after the start code, 0 … 512; breakUs, markAfterBreakUs: a transmitter's shortest
 *   unless given
 * @throws {ArgumentError} when slotCount is out of range or a time is not finite and > 0
 * @source ANSI E1.11; the transmitter's 92, 12 and 1204 µs from memory
 * @validity a line or a splitter; a radio link has a frame rate of its own
 * @example dmxFrame({ slotCount: 512 }).frameUs; // => 22676
 */
export function dmxFrame(terms: {
  readonly slotCount: number;
  readonly breakUs?: number;
  readonly markAfterBreakUs?: number;
}): DmxFrame {
  const { leastBreak, leastMarkAfterBreak, leastBreakToBreak, mostBreakToBreak, slot } = DMX_TIMING;
  const { slotCount, breakUs = leastBreak.valueUs, markAfterBreakUs = leastMarkAfterBreak.valueUs } = terms;
  requireWhole("slotCount", slotCount, 0, UNIVERSE_SLOT_COUNT);
  requirePositive("breakUs", breakUs);
  requirePositive("markAfterBreakUs", markAfterBreakUs);
  const slotsUs = slot.valueUs * (1 + slotCount);
  const busyUs = breakUs + markAfterBreakUs + slotsUs;
  const frameUs = Math.max(busyUs, leastBreakToBreak.valueUs);
  const caveats: DmxFrameCaveat[] = [];
  if (breakUs < leastBreak.valueUs) caveats.push("break-too-short");
  if (markAfterBreakUs < leastMarkAfterBreak.valueUs) caveats.push("mark-too-short");
  if (frameUs > mostBreakToBreak.valueUs) caveats.push("break-to-break-too-long");
  const idleUs = frameUs - busyUs;
  return { breakUs, markAfterBreakUs, slotsUs, idleUs, frameUs, rateHz: 1e6 / frameUs, caveats };
}
