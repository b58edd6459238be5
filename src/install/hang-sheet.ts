import { emergencyNotice } from "./emergency-notice.js";
import { STOPPING_FLAGS } from "./hang-flags.js";
import { levelPlaces } from "./hang-levels.js";
import type { HangOptions } from "./hang-options.js";
import { inOrderOfHanging } from "./hang-order.js";
import { hangPlace } from "./hang-place.js";
import { requireHangOptions } from "./hang-requirements.js";
import { hangRow } from "./hang-row.js";
import type { HangSheet } from "./hang-sheet-types.js";
import { suspensionTotals } from "./hang-totals.js";
import { spoolOrder } from "./spool-order.js";

/**
 * The hang sheet of a venue: drop = ceiling − trim − canopy, hooks and eye bolt − body height; chain in whole links,
 * rows brought level and never below trim unless told; cord = suspension + hardware + weave + make-up + reach;
 * safety cable on an anchor of its own. Weight only against ratings that were typed in.
 * @param options lengths m, weights kg, slopes degrees
 * @returns a row for each point, in the order of hanging, lengths null with the gap that stands in the way
 * @throws {ArgumentError} when a figure can't be one or two points have one name
 * @source arithmetic; allowances left open are common practice, no source; the box's limit: NEC 314.27, from memory
 * @validity chain that doesn't stretch, links of one pitch; it certifies nothing
 * @example
 * const figures = { stepM: 0.025, bodyHeightM: 0.5, topHookM: 0.05, bottomHookM: 0.05 };
 * const points = [{ name: "P1", room: "loft", ceilingHeightM: 8, trimHeightM: 6.4, weightKg: 9 }];
 * const { stepCount, suspensionM, flags } = hangSheet({ points, figures }).rows[0];
 * [stepCount, suspensionM, flags[0]]; // => [40, 1, "rating-not-given"]
 */
export function hangSheet(options: HangOptions): HangSheet {
  requireHangOptions(options);
  const { eyeToleranceM = EYE_TOLERANCE_M, wasteRatio = WASTE_RATIO, rooms = [] } = options;
  const { levelsRows = true, mayHangBelowTrim = false } = options;
  const places = inOrderOfHanging(options.points).map((point) => hangPlace(point, options));
  const levelled = levelPlaces(places, { levelsRows, mayHangBelowTrim, eyeToleranceM });
  const rows = places.map((place, index) => {
    const [stepCount, unevenM] = [levelled.stepCounts[index]!, levelled.unevenM[index]!];
    return hangRow(place, { hangRank: index + 1, stepCount, unevenM });
  });
  const cordsM = rows.flatMap(({ cord }) => cord?.lengthM ?? []);
  const safetiesM = rows.flatMap(({ safetyM }) => safetyM ?? []);
  return {
    rows,
    levels: levelled.levels,
    suspensions: suspensionTotals(rows, wasteRatio, options.chainSpoolM ?? null),
    cord: spoolOrder(cordsM, wasteRatio, options.cordSpoolM ?? null),
    safety: spoolOrder(safetiesM, wasteRatio, options.safetySpoolM ?? null),
    datums: [...new Set(places.map(({ point }) => point.room))].map((room) => ({
      room,
      laserLineM: rooms.find((one) => one.room === room)?.laserLineM ?? null,
    })),
    doNotHang: rows
      .filter(({ flags }) => flags.some((flag) => STOPPING_FLAGS.includes(flag)))
      .map(({ name }) => name),
    emergency: emergencyNotice(options.points),
    ...{ eyeToleranceM, wasteRatio },
  };
}

/** Assumed; a row of pendants is judged from below and along. */
const EYE_TOLERANCE_M = 0.02;
/** Assumed. */
const WASTE_RATIO = 0.1;
