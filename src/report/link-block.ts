import type { LinkWarning, PracticeCheck, SiteRow } from "../venue/index.js";
import type { ChannelReport } from "./channel-report.js";

/** The link by distance, as JSON: a level that is no number at all is null, and why. */
export function linkBlock({ plan: { link, setting }, predictAt }: ChannelReport): object {
  const { rows, budget, warnings, reference, ...rest } = link;
  return {
    ...rest,
    budget:
      budget === null || reference === null ? null : { ...finite(budget), gainReason: nullReason(reference) },
    reference: reference === null ? null : rowBlock(reference, predictAt),
    rows: rows.map((row) => rowBlock(row, predictAt)),
    predictionReason: predictAt === null ? "the path model was not fitted on site" : null,
    heights: setting.site.heights,
    floors: setting.site.floors,
    txAntenna: setting.site.txAntenna,
    rxAntenna: setting.site.rxAntenna,
    warnings: warnings.map(warningBlock),
  };
}

/** The placing of the antennas against good practice, as JSON. */
export function practiceBlock(practice: readonly PracticeCheck[]): object[] {
  return practice.map((check) => ({ ...check, source: "common practice, no source" }));
}

function rowBlock(row: SiteRow, predictAt: ChannelReport["predictAt"]): object {
  const { txNull, rxNull, ...lines } = row;
  return {
    ...finite(lines),
    gainReason: nullReason(row),
    predictionIntervalDb: predictAt === null ? null : intervalDb(row, predictAt),
    txNull,
    rxNull,
  };
}

/** Where 95 % of readings will put the path loss, floors counted as in the row. */
function intervalDb(
  { distanceM, floorLossDb }: SiteRow,
  predictAt: NonNullable<ChannelReport["predictAt"]>,
): readonly number[] {
  return predictAt(distanceM).intervalDb.map((each) => each + floorLossDb);
}

/** Why a gain, and with it the levels and margins, is no number; null where all are. */
export function nullReason({
  txGainDbi,
  rxGainDbi,
}: Pick<SiteRow, "txGainDbi" | "rxGainDbi">): string | null {
  const whose = [
    ...(txGainDbi === -Infinity ? ["the transmitter's antenna"] : []),
    ...(rxGainDbi === -Infinity ? ["the receiver's antenna"] : []),
  ];
  return whose.length === 0 ? null : `in the true null of ${whose.join(" and ")}: no direct signal`;
}

function warningBlock(warning: LinkWarning): object {
  if ("wall" in warning) return warning;
  const { move, ...told } = warning;
  return {
    ...finite(told),
    moveHelpDb: finiteOrNull(move.helpDb),
    moveAzimuthDeg: move.azimuthDeg,
    movedGainsDb: finiteOrNull(move.afterDb),
    moveReason: move.reason,
  };
}

/** The same with every −Infinity as null. */
export function finite(values: object): object {
  return Object.fromEntries(
    Object.entries(values).map(([key, value]: [string, unknown]) => [
      key,
      value === -Infinity ? null : value,
    ]),
  );
}

function finiteOrNull(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}
