import type { DwellLimit, RadioChannel, RegulationReview, RuleFigure, RuleNote } from "../radio/index.js";
import { dB, fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { bullets, section } from "./section.js";

/** The part of a report on the region's rule; none where no region was named. */
export function regulationSection(review: RegulationReview | null, style: TextStyle): string[][] {
  if (review === null) return [];
  return [section(`Regulation: ${review.rule.title}`, style, bullets(regulationLines(review), style))];
}

/**
 * A radio under a region's rule, one statement a line: what is used, what the rule leaves, by which rule, and
 * how that was read. The last statement is that local rules decide.
 */
export function regulationLines(review: RegulationReview): string[] {
  const { rule, judgement, breaches } = review;
  const kind = judgement.modulation === "fixed" ? "a fixed channel" : "a hopping radio";
  return [
    ...breaches.map(({ words }) => `BREACH: ${words}.`),
    `Power: ${fixed(judgement.eirpDbm, 1)} dBm EIRP used, at most ${fixed(judgement.maxEirpDbm, 1)} dBm for ${kind} with this antenna: ${sourceWords(judgement.limits[0]!.figure)}.`,
    `Band: ${rule.lowMhz}–${rule.highMhz} MHz (${sourceWords({ source: rule.bandSource, reading: rule.bandReading })}); ${outsideWords(review.outside)}.`,
    ...hopLines(judgement.rule.leastHopCount, judgement.rule.dwells),
    adaptivityLine(review),
    crossCheckLine(review),
    judgement.remark,
  ];
}

/** The source of what a rule states, and how it was read. */
export function sourceWords({ source, reading }: Pick<RuleNote, "source" | "reading">): string {
  return `${source}; ${reading}`;
}

/** Times on one hop frequency. */
export function dwellWords(dwells: readonly DwellLimit[]): string {
  if (dwells.length === 0) return "none read";
  return dwells
    .map(({ appliesTo, mostDwellS }) => {
      const whom = appliesTo === "any" ? "" : ` if ${appliesTo}`;
      return `${fixed(mostDwellS.value * 1000, 0)} ms${whom} (${sourceWords(mostDwellS)})`;
    })
    .join(", ");
}

function hopLines(least: RuleFigure | null, dwells: readonly DwellLimit[]): string[] {
  if (least === null) return [];
  return [
    `Hop frequencies: at least ${least.value} (${sourceWords(least)}). Dwell on one: ${dwellWords(dwells)}.`,
  ];
}

function adaptivityLine({ rule, adaptivity, judgement }: RegulationReview): string {
  const { note, fromEirpDbm, mostMediumUseRatio } = rule.adaptivity;
  const asks = `${note.words} (${sourceWords(note)})`;
  if (fromEirpDbm === null) return `Adaptivity: ${asks}.`;
  const from = `asked from ${fromEirpDbm.value} dBm EIRP up (${sourceWords(fromEirpDbm)})`;
  if (!adaptivity.asked) return `Adaptivity, ${from}: not asked of ${fixed(judgement.eirpDbm, 1)} dBm.`;
  const verdict = adaptivity.mustAdapt === true ? "this radio must be adaptive, ask the maker" : "within it";
  const most =
    mostMediumUseRatio === null
      ? ""
      : `medium use (EIRP / 100 mW x airtime) ${percent(adaptivity.mediumUseRatio)}, at most ${percent(mostMediumUseRatio.value)} for a radio that doesn't adapt (${sourceWords(mostMediumUseRatio)}): ${verdict}. `;
  return `Adaptivity, ${from}: ${most}${asks}.`;
}

function percent(ratio: number): string {
  return `${fixed(100 * ratio, 1)} %`;
}

function crossCheckLine({ crossCheck, rule }: RegulationReview): string {
  const { country, lowMhz, highMhz, maxEirpDbm, excessDb, outside, source } = crossCheck;
  const whose = rule.region === "EU" ? `${country}, as each member state` : country;
  const power = excessDb > 0 ? `our EIRP is ${dB(excessDb)} above it` : "our EIRP lies within it";
  return `Cross-check only: a driver's table of the open regulatory database, not the rule (${source}): ${whose}: ${lowMhz}–${highMhz} MHz, ${fixed(maxEirpDbm, 1)} dBm; ${power}, ${outsideWords(outside)}.`;
}

/** `every radio channel inside`, or which are not. */
function outsideWords(channels: readonly RadioChannel[]): string {
  if (channels.length === 0) return "every radio channel inside";
  const ranges: [from: number, to: number][] = [];
  for (const { channel } of [...channels].sort((a, b) => a.channel - b.channel)) {
    const last = ranges[ranges.length - 1];
    if (last !== undefined && channel === last[1] + 1) last[1] = channel;
    else ranges.push([channel, channel]);
  }
  const words = ranges.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(", ");
  return `radio ch ${words} outside`;
}
