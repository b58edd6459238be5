import { scaleLinear } from "d3-scale";
import { frequencyTicksMhz } from "../../report/index.js";
import { footAxis } from "./axis.js";
import type { Plot } from "./axis.js";

/** Where frequencies lie across a plot. */
export function frequencyScale(
  { leftPx, rightPx }: Plot,
  startMhz: number,
  endMhz: number,
): (mhz: number) => number {
  return scaleLinear([startMhz, endMhz], [leftPx, rightPx]);
}

/** The axis of frequency in MHz under every picture of the band. */
export function frequencyAxis(plot: Plot, startMhz: number, endMhz: number): string[] {
  const xOf = frequencyScale(plot, startMhz, endMhz);
  return footAxis(
    plot,
    frequencyTicksMhz(startMhz, endMhz).map((mhz) => ({ atPx: xOf(mhz), text: String(mhz) })),
  );
}
