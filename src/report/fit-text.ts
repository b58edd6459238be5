import { printable } from "../issues/index.js";
import { radioLine, RADIO_CAUTIONS } from "./assumptions.js";
import { fitGlance } from "./fit-glance.js";
import { methodLines, outlierLines, plotLines, predictionLines, unusableLines } from "./fit-lines.js";
import { rowsWords } from "./fit-words.js";
import type { FitReport } from "./fit-report.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets, opening, pageText, section } from "./section.js";

/** `stillband fit` for a terminal: the model, or why there is none and what to measure next. */
export function fitText(report: FitReport, style: TextStyle): string {
  const { fit, readings, walk } = report;
  const fitted =
    fit.refusal !== null
      ? []
      : [
          section("Fits side by side", style, methodLines(report, fit, style)),
          section("What it expects", style, predictionLines(report, fit, style)),
          section("Measured less fitted", style, plotLines(report, fit, style)),
          section("Outliers", style, outlierLines(report, fit, style)),
        ];
  const rows = [`${printable(readings.source, 200)}: ${rowsWords(report)}.`];
  const parts = [
    opening(fitGlance(report, style.units), style),
    ...fitted,
    section("Rows", style, bullets(rows, style)),
    ...(walk.unusable.length === 0 ? [] : [section("Not usable", style, unusableLines(report, style))]),
    section("Assumed", style, bullets(assumedLines(report), style)),
    section("Cautions", style, bullets([CERTIFIES_NOTHING, ...RADIO_CAUTIONS.slice(1)], style)),
  ];
  return pageText(parts);
}

const CERTIFIES_NOTHING =
  "Computed from the readings and figures named; it certifies nothing. EIRP by the region's rule: local rules decide.";

function assumedLines(report: FitReport): string[] {
  const { profile, readings, walk } = report;
  const { txPowerDbm, txFeederLossDb, txGainDbi, rxGainDbi, enclosure, enclosureLossDb } = profile;
  const housing = report.countsEnclosure
    ? `, less ${enclosureLossDb.value} dB of ${enclosure.value}`
    : "; the receiver walked with stands in the open (else --enclosure)";
  return [
    radioLine(profile),
    `Loss = ${fixed(report.losslessDbm, 1)} dBm less the level read: power ${txPowerDbm.value} dBm - feeder ${txFeederLossDb.value} dB + antennas ${figureText(txGainDbi.value)} and ${figureText(rxGainDbi.value)} dBi, as if aimed at each other all along${housing}. Another transmitter or receiver on the walk: --set tx_power_dbm=..., --set rx_gain_dbi=...; an error there shifts the loss at 1 m, not the exponent.`,
    "A reading is an average over small-scale fading: several, moved half a metre about, each.",
    ...(walk.censored.some(Boolean) ? [floorLine(report)] : []),
    ...(readings.readings.some(({ isLevelAssumed }) => isLevelAssumed)
      ? ["Levels given as per cent: N/2 - 100 dBm (common practice, no source)."]
      : []),
    ...(walk.readings.some(({ distanceM }) => distanceM === null)
      ? ["Distances from positions are 3-D; a position without z lies at z = 0."]
      : []),
    "It holds for this building, these doors, this crowd and the distances walked.",
  ];
}

function floorLine({ floorDbm }: FitReport): string {
  return floorDbm === null
    ? "Not heard: below the floor that the row names, else below the lowest level heard (--not-heard-below says it)."
    : `Not heard: below ${floorDbm} dBm, where the row names no floor of its own.`;
}

function figureText(value: number): string {
  return String(Number(value.toFixed(2)));
}
