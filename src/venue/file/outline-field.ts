import { outlineFault } from "../outline-fault.js";
import type { OutlineFault } from "../outline-fault.js";
import type { PlanPoint } from "../venue-room.js";
import type { Field } from "./field.js";
import { refined } from "./field.js";
import { point } from "./field-length.js";
import { list } from "./field-list.js";

/** Corners of an area in order, the first not repeated; edges don't cross. */
export function outline(description: string): Field<readonly PlanPoint[]> {
  const words = `${description}: corners in order, the first not repeated at the end`;
  const corners = list(words, point("a corner"), { leastCount: 3, mostCount: 500 });
  return refined(corners, (value, spot) => {
    const fault = outlineFault(value);
    if (fault === null) return value;
    return spot.item(fault.cornerIndex).error(faultWords(fault), `${EXPECTED[fault.code]}`, "contradiction");
  });
}

const EXPECTED = {
  "too-few-corners": "three corners or more",
  "repeated-corner": "each corner once, the first not repeated at the end",
  "edges-meet": "an outline whose edges do not cross or touch; put the corners in order round the room",
} as const;

function faultWords({ cornerIndex, otherIndex, code }: OutlineFault): string {
  if (otherIndex === null) return `corner ${cornerIndex}`;
  if (code === "repeated-corner") return `corner [${cornerIndex}] at the place of corner [${otherIndex}]`;
  return `the edges from corners [${cornerIndex}] and [${otherIndex}] meet`;
}
