import {
  channelWords,
  hurtWords,
  mendWords,
  PRACTICE_TITLE,
  practiceLine,
  regulationLines,
} from "../../report/index.js";
import type { PlanReport } from "../../report/index.js";
import { list, markup } from "../html/markup.js";
import type { Content } from "../html/markup.js";
import { part } from "../html/sheet.js";
import { columnsOf, table } from "../html/table.js";
import { marked, VERDICT_KEY } from "../html/verdict.js";
import type { PageParts } from "../page-parts.js";
import { derivationWords } from "./derivation.js";

type SystemLinks = PlanReport["links"]["systems"][number];

/** A system's receivers, weakest first, how their figures came about, and how its antennas are placed. */
export function receiverPart(one: SystemLinks, index: number, parts: PageParts): Content {
  const { system, receivers, reason, practice } = one;
  const title = `System ${system.name}: ${receivers.length === 0 ? "not judged" : channelWords(one)}`;
  if (receivers.length === 0) return part(title, markup`<p>${reason ?? "It has no receivers."}</p>\n`);
  const units = parts.figures.units;
  const review = parts.report.links.reviews.get(system.name);
  return part(
    title,
    receiverTable(one, index, parts),
    markup`<p class="key">${VERDICT_KEY} Lost: share of frames lost at the typical position, and at the edge of the stated share of positions.</p>\n`,
    markup`<details><summary>How these figures came about</summary>\n${budgetTable(one, index, parts)}<p class="key">${BUDGET_KEY}</p>\n</details>\n`,
    markup`<details><summary>What hurts, and what would mend it</summary>\n${mendsTable(one, index, parts)}</details>\n`,
    markup`<details><summary>${PRACTICE_TITLE}</summary>\n${list(practice.map((check) => practiceLine(check, units)))}</details>\n`,
    review === undefined
      ? null
      : markup`<details><summary>Regulation: ${review.rule.title}</summary>\n${list(regulationLines(review))}</details>\n`,
  );
}

const RECEIVER_HEADS = [
  "-#",
  "receiver",
  "room",
  "-distance",
  "-to spare",
  "limit",
  "-clear air",
  "-lost",
  "-at edge",
  "-positions held",
];

function receiverTable(
  { system, receivers }: SystemLinks,
  index: number,
  { figures, report }: PageParts,
): Content {
  const rows = receivers.map((one, row) => {
    const at = `/links/systems/${String(index)}/receivers/${String(row)}`;
    const { receiver, judged } = one;
    const title = derivationWords(one, report.links);
    const spare = figures.figure("dB", `${at}/workingMarginDb`, { title, none: "no signal" });
    return [
      figures.figure("asIs", `${at}/rank`),
      receiver.name,
      receiver.room,
      figures.length("distance", `${at}/distanceM`),
      marked(judged.budget.workingMarginDb, spare),
      judged.budget.limit,
      figures.figure("share", `${at}/clearAirRatio`),
      figures.figure("lost", `${at}/frames/typical/lossRatio`),
      figures.figure("lost", `${at}/frames/edge/lossRatio`),
      figures.figure("share", `${at}/heldRatio`),
    ];
  });
  return table({
    id: `receivers-${String(index)}`,
    caption: `Receivers of ${system.name}, weakest first`,
    alikeIndex: [2, 5, 6, 7, 8, 9],
    columns: columnsOf(...RECEIVER_HEADS),
    rows,
  });
}

const BUDGET_KEY =
  "To spare = the lesser of received − sensitivity and received − interference − C/I needed, less fading.";

/** Terms of the sum from the transmitter to what is left, in the order in which they are added up. */
const TERMS: readonly (readonly [key: string, head: string])[] = [
  ["txPowerDbm", "power"],
  ["txFeederLossDb", "− feeder"],
  ["txGainDbi", "+ antenna"],
  ["pathLossDb", "− path"],
  ["wallLossDb", "− walls"],
  ["enclosureLossDb", "− canopy"],
  ["crowdLossDb", "− audience"],
  ["polarisationLossDb", "− polar."],
  ["rxGainDbi", "+ rx antenna"],
  ["receivedDbm", "= received"],
  ["sensitivityDbm", "sensitivity"],
  ["interferenceDbm", "interference"],
  ["requiredCiDb", "C/I needed"],
  ["fadeAllowanceDb", "fading"],
  ["workingMarginDb", "to spare"],
];

function budgetTable({ system, receivers }: SystemLinks, index: number, { figures }: PageParts): Content {
  const rows = receivers.map(({ receiver }, row) => [
    receiver.name,
    ...TERMS.map(([key]) =>
      figures.figure("tenth", `/links/systems/${String(index)}/receivers/${String(row)}/budget/${key}`),
    ),
  ]);
  return table({
    id: `budget-${String(index)}`,
    caption: `Budgets of ${system.name}, in dB and dBm`,
    // Each but what is left.
    alikeIndex: TERMS.map((_, term) => term + 1).slice(0, -1),
    columns: columnsOf("receiver", ...TERMS.map(([, head]) => `-${head}`)),
    rows,
  });
}

function mendsTable(
  { system, receivers }: SystemLinks,
  index: number,
  { report, figures, sources }: PageParts,
): Content {
  const { antenna } = report.links.words;
  const rows = receivers.map((one) => {
    const [loudest] = one.judged.contributors;
    const mends = one.mends.map((mend) => mendWords(mend, antenna, figures.units));
    return [
      one.receiver.name,
      hurtWords(one),
      loudest === undefined ? "nothing above the noise" : sources.nameOf(loudest.emitter),
      mends.length === 0 ? "nothing that was tried brings half a dB" : mends.join("; "),
    ];
  });
  return table({
    id: `mends-${String(index)}`,
    caption: `What takes most of ${system.name} beyond 10 m in the open; each mend alone, for that receiver`,
    columns: columnsOf("receiver", "hurts most", "loudest there", "would mend it"),
    rows,
  });
}
