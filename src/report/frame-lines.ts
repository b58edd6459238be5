import type { ChannelPlan } from "../venue/index.js";
import { exactPercent, framesAMinute, lossPercent, sharePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { tableLines } from "./text-layout.js";

/** Frame loss beside clear air, at the typical position and at the edge of the stated share. */
export function frameLines({ frames, setting }: ChannelPlan, style: TextStyle): string[] {
  if (frames === null) return ["none to state"];
  const positions = [
    ["typical", frames.typical],
    [`edge of ${exactPercent(setting.reliability)}`, frames.edge],
  ] as const;
  const rows = positions.map(([position, { clearAirRatio, lossRatio, lostPerMinute }]) => [
    position,
    sharePercent(clearAirRatio),
    lossPercent(lossRatio),
    framesAMinute(lostPerMinute),
  ]);
  return tableLines(
    [
      { head: "position", align: "left" },
      { head: "clear air", align: "right" },
      { head: "frames lost", align: "right" },
      { head: "which is", align: "left" },
    ],
    rows,
    style.columnCount,
  );
}
