import { printable } from "../issues/index.js";
import type { Survey, SurveyEmitter } from "../scan/index.js";
import type { Contributor } from "../scorer/index.js";
import type { ChannelPlan, PlannedChannel, WifiMoves } from "../venue/index.js";
import { dB, fixed, lossPercent, sharePercent, wholePercent } from "./number-format.js";
import type { TextStyle } from "./pen.js";
import { tableLines } from "./text-layout.js";

/** The ranking, best first, each channel with the source that hurts most. A hop set shows its ends only. */
export function rankingTable(
  plan: ChannelPlan,
  survey: Survey,
  style: TextStyle,
  moves: WifiMoves | null = null,
): string[] {
  const rows = plan.ranking.map((score) => {
    const [first] = score.contributors;
    const more = score.contributors.length > 1 ? ` +${score.contributors.length - 1}` : "";
    const source = sourceWords(score, first, survey);
    return [
      String(score.rank),
      `${score.channel} (${score.centreMhz} MHz)`,
      dB(score.marginDb),
      ...(moves === null ? [] : [dB(moves.ifWifiMovesDb.get(score.channel) ?? null)]),
      sharePercent(score.clearAirRatio),
      lossPercent(score.frames.typical.lossRatio),
      score.allowed ? `${source}${more}` : `not allowed: ${score.reason}`,
    ];
  });
  const shown =
    rows.length <= MOST_RANKS
      ? rows
      : [...rows.slice(0, MOST_RANKS / 2), gap(rows, moves === null ? 4 : 5), ...rows.slice(-MOST_RANKS / 2)];
  const table = tableLines(
    [
      { head: "#", align: "right" },
      { head: "radio ch", align: "left" },
      { head: "margin", align: "right" },
      ...(moves === null ? [] : [{ head: "if moved", align: "right" } as const]),
      { head: "clear air", align: "right" },
      { head: "lost*", align: "right" },
      { head: "strongest source in it", align: "left" },
    ],
    shown,
    style.columnCount,
  );
  return [...table, "* share of frames lost at the typical position; the edge stands further down."];
}

const MOST_RANKS = 16;

function gap(rows: readonly unknown[], blankCount: number): string[] {
  const blanks = Array.from({ length: blankCount - 1 }, () => "");
  return ["", `(${rows.length - MOST_RANKS} more)`, ...blanks, "--json has them all"];
}

function sourceWords({ spokenBy }: PlannedChannel, first: Contributor | undefined, survey: Survey): string {
  if (spokenBy === null) return "not covered by any scan";
  const beacons = first === undefined ? null : shortSource(first, survey);
  if (spokenBy === "sweep") return beacons === null ? "power sweep" : `power sweep; ${beacons}`;
  return beacons ?? "nothing above the noise";
}

function shortSource({ emitter }: Contributor, survey: Survey): string {
  const source = survey.emitters.find((candidate) => candidate.emitter === emitter);
  return source === undefined ? emitter : `Wi-Fi ch ${source.channel} ${sourceName(source)}`;
}

/** What a source calls itself, made harmless, or its address. */
export function sourceName({ names, emitter }: SurveyEmitter): string {
  if (names.length === 0) return `hidden, ${emitter}`;
  const more = names.length > 1 ? ` and ${names.length - 1} more` : "";
  return `"${printable(names[0]!, 32)}"${more}`;
}

/** Whose a source is; with a question mark where that is presumed from its level. */
export function presumedOwner({ owner, ownerMarked }: SurveyEmitter): string {
  return ownerMarked ? owner : `${owner}?`;
}

/** The sources behind one channel, strongest first: what they do to us, then who they are. */
export function sourcesTable(
  score: PlannedChannel,
  survey: Survey,
  style: TextStyle,
  mostCount: number,
): string[] {
  const rows = score.contributors.slice(0, mostCount).map((contributor) => {
    const source = survey.emitters.find(({ emitter }) => emitter === contributor.emitter);
    const aboveDb = contributor.inChannelDbm - score.distribution.restDbm;
    return [
      `${fixed(aboveDb, 1)} dB`,
      `${wholePercent(contributor.airtimeRatio)}${contributor.airtimeAssumed ? " assumed" : ""}`,
      wholePercent(contributor.onRatio),
      source === undefined ? "" : presumedOwner(source),
      source === undefined ? "" : String(source.channel),
      source === undefined ? contributor.emitter : sourceName(source),
    ];
  });
  const lines = tableLines(
    [
      { head: "over noise", align: "right" },
      { head: "airtime", align: "left" },
      { head: "on", align: "right" },
      { head: "owner", align: "left" },
      { head: "Wi-Fi ch", align: "right" },
      { head: "name", align: "left" },
    ],
    rows,
    style.columnCount,
  );
  const hidden = score.contributors.length - rows.length;
  return hidden > 0 ? [...lines, `(and ${hidden} weaker)`] : lines;
}
