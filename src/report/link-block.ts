import type { ChannelPlan, LinkWarning, PracticeCheck, SiteRow } from "../venue/index.js";

/** The link by distance, as JSON: a level that is no number at all is null, and why. */
export function linkBlock({ link, setting }: ChannelPlan): object {
  const { rows, budget, warnings, reference, ...rest } = link;
  return {
    ...rest,
    budget:
      budget === null || reference === null ? null : { ...finite(budget), gainReason: nullReason(reference) },
    reference: reference === null ? null : rowBlock(reference),
    rows: rows.map(rowBlock),
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

function rowBlock(row: SiteRow): object {
  const { txNull, rxNull, ...lines } = row;
  return { ...finite(lines), gainReason: nullReason(row), txNull, rxNull };
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
