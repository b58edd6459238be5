import type { ChannelReport } from "./channel-report.js";
import { predictionWords } from "./prediction-lines.js";
import { chosenLengths, dB, exactPercent, fixed } from "./number-format.js";
import type { LengthUnit } from "./pen.js";

/** Where the reference receiver is, and what the path passes. */
export function referenceLine({ plan, pathWords }: ChannelReport, unit: LengthUnit): string {
  const { setting, link } = plan;
  const { heights } = setting.site;
  const at = chosenLengths(setting.distanceM, unit);
  const where =
    heights === null
      ? `${at}, level with the transmitter`
      : `${at} along the floor, antennas at ${chosenLengths(heights.txHeightM, unit)} (transmitter) and ${chosenLengths(heights.rxHeightM, unit)}; the path is 3-D`;
  return `Reference receiver at ${where}; path ${pathWords}; ${betweenWords(plan.setting.site.floors, link.walls)}no crowd in the path (0 dB).`;
}

function betweenWords(
  floors: ChannelReport["plan"]["setting"]["site"]["floors"],
  walls: ChannelReport["plan"]["link"]["walls"],
): string {
  const wallWords = walls.map(({ wall, lossDb, edition }) =>
    edition.startsWith("ITU") ? `${wall} ${dB(lossDb)} (${edition})` : `${wall} (given)`,
  );
  const between = [
    ...(walls.length === 0 ? ["no walls (0 dB)"] : [`in every row ${wallWords.join(", ")}`]),
    ...(walls.some(({ edition }) => edition.startsWith("ITU")) ? [SLAB_WORDS] : []),
    ...(floors === null
      ? []
      : [
          `${floors.floorCount} ${floors.floorCount === 1 ? "floor" : "floors"}, ${floors.building} building (ITU-R P.1238)`,
        ]),
  ];
  return `${between.join("; ")}; `;
}

/** What a slab's one figure is. */
const SLAB_WORDS =
  "slabs averaged over 2400–2483.5 MHz, the field along the wall (TE), as from upright antennas; off square mostly the greater loss";

/** Which way the antennas gain, and what of that counts for interference. */
export function antennaLine({ antennaWords: { tx, rx } }: ChannelReport): string {
  if (tx === null && rx === null)
    return "Antenna gains are the profile's, the same in every direction (--tx-antenna, --rx-antenna).";
  const named = `transmitter ${tx ?? "the profile's gain"}; receiver ${rx ?? "the profile's gain"}`;
  const crossed =
    tx !== null && rx !== null ? " Crossed antennas lose at most 10 dB (multipath; assumed)." : "";
  const interference =
    rx === null ? "" : " Interference may come from anywhere: it takes the receiver antenna's peak.";
  return `Antennas: ${named}; gains towards each other in every row; power is judged by the peak.${interference}${crossed}`;
}

/** The fade law, the level that it counts from, and what is not in it. */
export function fadingLine({ plan, fadeWords, predictAt }: ChannelReport, unit: LengthUnit): string {
  const { link, setting } = plan;
  const sigma = link.shadowingSigmaDb === null ? "" : ` sigma ${fixed(link.shadowingSigmaDb, 1)} dB`;
  const interval = predictionWords(predictAt, link.reference?.distanceM ?? setting.distanceM, unit);
  const shadowing = setting.fadeLaw.law.includes("lognormal")
    ? "shadowing is in it by the law's own sigma"
    : interval === null
      ? `shadowing${sigma} of the path model is not in it`
      : `shadowing about the fitted model is not in it: ${interval}`;
  const over = fixed(link.meanOverMedianDb, 1);
  const reference =
    link.fadeReference === "mean"
      ? `Counted from the local mean, the power averaged over small-scale fading, ${over} dB over the median position.`
      : `Counted from the median of the local means; the mean power lies ${over} dB over the median position.`;
  return `Fading ${fadeWords}: ${dB(link.fadeAllowanceDb)} for ${exactPercent(setting.reliability)} of positions, each receiver for itself; ${shadowing}. ${reference} Hidden antenna: Rayleigh, ${dB(link.noSightFadeAllowanceDb)}.${sightWords(plan)}`;
}

/** A line of sight taken through a wall or floor is a hope: said where it is. */
function sightWords({ setting }: ChannelReport["plan"]): string {
  const { walls, floors } = setting.site;
  const parted = walls.length > 0 || (floors?.floorCount ?? 0) > 0;
  if (!parted || setting.fadeLaw.law !== "rician") return "";
  return " A wall or floor lies between: if it hides the receiver, take the hidden reach, or --fade rayleigh.";
}
