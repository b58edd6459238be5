import type { PowerRule, RadioProfile, RegionRule, RegulationReview, RuleFigure } from "../radio/index.js";
import { fixed } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { profileText } from "./profile-text.js";
import { dwellWords, regulationLines, sourceWords } from "./regulation-lines.js";
import { bullets, pageText, section } from "./section.js";
import { tableLines, wrapped } from "./text-layout.js";

/** A profile with what a region's rule says of it. */
export interface JudgedProfile {
  readonly profile: RadioProfile;
  readonly review: RegulationReview;
}

/** A region's rule, row by row, and each profile judged by it; of a single one, every point and every figure. */
export function regionText(rule: RegionRule, judged: readonly JudgedProfile[], style: TextStyle): string {
  const [only] = judged;
  const parts = [
    section(`${rule.title}: ${rule.lowMhz}–${rule.highMhz} MHz`, style, headLines(rule, style)),
    ...rule.rules.map((row) => section(rowTitle(row), style, bullets(rowLines(row), style))),
    ...(only !== undefined && judged.length === 1
      ? [
          section(`${only.profile.name} under it`, style, bullets(regulationLines(only.review), style)),
          profileText(only.profile, style).trimEnd().split("\n"),
        ]
      : [section("The profiles under it, as they stand", style, judgedTable(judged, style))]),
  ];
  return pageText(parts);
}

function headLines(rule: RegionRule, style: TextStyle): string[] {
  const { note } = rule.adaptivity;
  return bullets(
    [
      `Band: ${sourceWords({ source: rule.bandSource, reading: rule.bandReading })}.`,
      `Adaptivity: ${note.words} (${sourceWords(note)}).`,
      ...(rule.remark === "" ? [] : [rule.remark]),
    ],
    style,
  );
}

function rowTitle({ modulation, leastHopCount }: PowerRule): string {
  if (modulation === "fixed") return "Fixed channel";
  return `Hopping over ${leastHopCount?.value} frequencies or more`;
}

function rowLines(rule: PowerRule): string[] {
  const { maxEirpDbm, maxConductedDbm, freeAntennaGainDbi, density, leastHopCount, dwells } = rule;
  return [
    ...line(leastHopCount, (value) => `at least ${value} hop frequencies`),
    ...line(maxEirpDbm, (value) => `radiated: ${fixed(value, 1)} dBm EIRP`),
    ...line(maxConductedDbm, (value) => `into the antenna: ${fixed(value, 1)} dBm`),
    ...line(
      freeAntennaGainDbi,
      (value) => `antenna: up to ${value} dBi; 1 dB less power for each dB of gain above`,
    ),
    ...line(
      density?.limitDbmPerMhz ?? null,
      (value) =>
        `density: ${fixed(value, 1)} dBm/MHz ${density?.at === "eirp" ? "EIRP" : "into the antenna"}`,
    ),
    ...(rule.modulation === "hopping" ? [`dwell on one frequency: ${dwellWords(dwells)}`] : []),
  ];
}

function line(figure: RuleFigure | null, words: (value: number) => string): string[] {
  return figure === null ? [] : [`${words(figure.value)} (${sourceWords(figure)})`];
}

function judgedTable(judged: readonly JudgedProfile[], style: TextStyle): string[] {
  const rows = judged.map(({ profile, review: { judgement, breaches, outside } }) => [
    profile.name,
    fixed(judgement.eirpDbm, 1),
    fixed(judgement.maxEirpDbm, 1),
    judgement.turnDownDb > 0 ? `${fixed(judgement.turnDownDb, 1)} dB` : "no",
    `${outside.length}`,
    breaches.length === 0 ? "keeps it" : breaches.map(({ code }) => code).join(", "),
  ]);
  const heads = ["profile", "EIRP dBm", "at most", "turn down", "channels outside", "breach"];
  const columns = heads.map(
    (head, index) => ({ head, align: index === 0 || index === 5 ? "left" : "right" }) as const,
  );
  const last = judged[0]?.review.judgement.remark ?? "";
  return [
    ...tableLines(columns, rows, style.columnCount),
    ...wrapped(`A built-in power is turned down where a plan names the region. ${last}`, style.columnCount),
  ];
}
