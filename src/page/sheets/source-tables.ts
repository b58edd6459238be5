import { presumedOwner, surveyAssumptions, wifiWords } from "../../report/index.js";
import type { SurveyReport } from "../../report/index.js";
import { list, markup } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { columnsOf, table } from "../html/table.js";
import type { PageParts } from "../page-parts.js";

/** The sources of each way in which the radios listen, hardest on them first. */
export function sourceTables(parts: PageParts): Content {
  return parts.report.surveys.map((survey, index) => [
    sourceTable(survey, index, parts),
    markup`<details><summary>What these figures rest on</summary>\n${list(surveyAssumptions(survey))}</details>\n`,
  ]);
}

function sourceTable({ survey, hits, profileName }: SurveyReport, index: number, parts: PageParts): Content {
  const { figures, sources } = parts;
  const hitAt = new Map(hits.map(({ emitter }, at) => [emitter, at]));
  const strength = (emitter: string): number => hits[hitAt.get(emitter) ?? -1]?.inChannelDbm ?? -Infinity;
  const strongestFirst = survey.emitters
    .map((source, at) => ({ source, at }))
    .sort((a, b) => strength(b.source.emitter) - strength(a.source.emitter) || a.at - b.at);
  const rows = strongestFirst.map(({ source, at }) => {
    const hit = `/surveys/${String(index)}/hits/sources/${String(hitAt.get(source.emitter) ?? 0)}`;
    const own = `/surveys/${String(index)}/emitters/${String(at)}`;
    const hasHit = hitAt.has(source.emitter);
    return [
      hasHit ? figures.figure("asIs", `${hit}/channel`) : "none",
      hasHit ? figures.figure("dB", `${hit}/aboveNoiseDb`, { none: "below" }) : "below",
      [figures.figure("whole", `${own}/airtimeRatio`), source.airtimeAssumed ? " assumed" : ""],
      presumedOwner(source),
      wifiWords(source),
      figures.figure("wholeDbm", `${own}/levelDbm`),
      sources.placeOf(source.emitter),
      sources.nameOf(source.emitter),
    ];
  });
  const heads = ["-radio ch", "-over noise", "-airtime", "owner", "Wi-Fi ch", "-level", "at", "who"];
  const caption = `Sources, hardest on a ${profileName} receiver first`;
  return table({ id: `sources-${String(index)}`, caption, columns: columnsOf(...heads), rows });
}
