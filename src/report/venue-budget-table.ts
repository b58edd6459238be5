import { printable } from "../issues/index.js";
import type { ReceiverLink, SystemLinks } from "../venue/index.js";
import { dBi, dBm, lengthText, minus } from "./level-words.js";
import { dB, exactPercent, fixed, heldPercent, lossPercent, sharePercent } from "./number-format.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { clipped, tableLines } from "./text-layout.js";
import type { VenueLinkReport } from "./venue-link-report.js";
import { verdictMark } from "./verdict-mark.js";

type Row = readonly [label: string, figure: string, note: string];

/** One receiver's budget, line by line. */
export function venueBudgetTable(
  report: VenueLinkReport,
  system: SystemLinks,
  one: ReceiverLink,
  style: TextStyle,
): string[] {
  return tableLines(
    [
      { head: "line", align: "left" },
      { head: "figure", align: "right" },
      { head: "from", align: "left" },
    ],
    [...gainRows(report, system, one, style.units), ...measureRows(report, one)],
    style.columnCount,
  );
}

function gainRows(
  { words }: VenueLinkReport,
  { system: { profile }, transmitter }: SystemLinks,
  { judged, receiver }: ReceiverLink,
  unit: LengthUnit,
): Row[] {
  const { budget, link } = judged;
  const antenna = (own: typeof receiver.antenna): string =>
    own === null ? "the profile's, in every direction" : words.antenna(own);
  const nulls = (isNull: boolean): string => (isNull ? "IN ITS NULL: " : "");
  return [
    ["transmit power", dBm(budget.txPowerDbm), profile.txPowerDbm.status],
    ["feeder", minus(budget.txFeederLossDb), profile.txFeederLossDb.status],
    [
      "transmitter antenna",
      dBi(budget.txGainDbi),
      nulls(link.txNull) + antenna(transmitter?.antenna ?? null),
    ],
    [
      `path, ${lengthText(link.distanceM, unit)}`,
      minus(budget.pathLossDb - link.obstacles.floorLossDb),
      link.caveats.length === 0
        ? "the room's path model"
        : `the room's path model: ${link.caveats.join(", ")}`,
    ],
    ...link.obstacles.walls.map(({ wall, lossDb, openingIndex, incidenceDeg }): Row => [
      clipped(`wall ${printable(wall, 40)}`, 24),
      minus(lossDb),
      `${openingIndex === null ? "" : `its opening ${openingIndex + 1}, `}${fixed(incidenceDeg, 0)}° off square`,
    ]),
    ...(link.obstacles.floorLossDb === 0
      ? []
      : [["floors", minus(link.obstacles.floorLossDb), `${link.obstacles.floors.length} crossed`] as const]),
    ["enclosure", minus(budget.enclosureLossDb), receiver.enclosure ?? profile.enclosure.value],
    ["audience", minus(budget.crowdLossDb), "the path through people"],
    ["polarisation", minus(budget.polarisationLossDb), "at most 10 dB indoors (assumed)"],
    ["receiver antenna", dBi(budget.rxGainDbi), nulls(link.rxNull) + antenna(receiver.antenna)],
    ["received", dBm(budget.receivedDbm), "local mean"],
  ];
}

function measureRows({ terms, words }: VenueLinkReport, { judged, heldRatio, frames }: ReceiverLink): Row[] {
  const { budget, link, clearAirRatio, merit } = judged;
  const left = (marginDb: number): string =>
    marginDb === -Infinity ? "none left" : `leaves ${dB(marginDb)}`;
  const share = exactPercent(terms.reliability);
  const spoken = merit.spokenBy === "sweep" ? "; the power sweep spoke" : "";
  return [
    ["sensitivity", dBm(budget.sensitivityDbm), left(budget.sensitivityMarginDb)],
    [
      "interference + noise",
      dBm(budget.interferenceDbm),
      `exceeded ${exactPercent(terms.busyShareRatio)} of the time${spoken}`,
    ],
    ["required C/I", dB(budget.requiredCiDb), left(budget.interferenceMarginDb)],
    [
      `fade, ${share}`,
      minus(budget.fadeAllowanceDb),
      link.inSight ? words.fade : "Rayleigh: the transmitter is hidden",
    ],
    [
      "to spare",
      dB(budget.workingMarginDb),
      `${verdictMark(budget.workingMarginDb)} ${budget.verdict}; held at ${heldPercent(heldRatio)} of positions`,
    ],
    ["clear air", sharePercent(clearAirRatio), "at an instant; frames last longer"],
    [
      "frames lost",
      lossPercent(frames.typical.lossRatio),
      `at the edge of ${share}: ${lossPercent(frames.edge.lossRatio)}`,
    ],
  ];
}
