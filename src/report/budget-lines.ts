import type { ChannelReport } from "./channel-report.js";
import { dBi, dBm, lengthText, minus } from "./level-words.js";
import { dB, exactPercent, heldPercent } from "./number-format.js";
import type { LengthUnit, TextStyle } from "./pen.js";
import { clipped, tableLines } from "./text-layout.js";

type Row = readonly [label: string, figure: string, note: string];

/** The link budget at the reference distance, line by line. */
export function budgetLines(report: ChannelReport, style: TextStyle): string[] {
  const { plan } = report;
  const { budget, reference } = plan.link;
  if (budget === null || reference === null) return ["none to state"];
  const rows = [...gainRows(report, style.units), ...measureRows(report)];
  return tableLines(
    [
      { head: "line", align: "left" },
      { head: "figure", align: "right" },
      { head: "from", align: "left" },
    ],
    rows,
    style.columnCount,
  );
}

function gainRows({ plan, pathWords, antennaWords }: ChannelReport, unit: LengthUnit): Row[] {
  const { setting, link } = plan;
  const [budget, reference] = [link.budget!, link.reference!];
  const { floors } = setting.site;
  const pathOnlyDb = budget.pathLossDb - reference.floorLossDb;
  const openPath = pathWords.replace(/, [\d.]+ dB of floors$/, "");
  return [
    ["transmit power", dBm(budget.txPowerDbm), setting.profile.txPowerDbm.status],
    ["feeder", minus(budget.txFeederLossDb), setting.profile.txFeederLossDb.status],
    ["transmitter antenna", dBi(budget.txGainDbi), antennaWords.tx ?? "the profile's, in every direction"],
    [`path, ${lengthText(reference.distanceM, unit)}`, minus(pathOnlyDb), openPath],
    ...link.walls.map(({ wall, lossDb, edition }): Row => [
      clipped(`wall ${wall}`, 24),
      minus(lossDb),
      edition,
    ]),
    ...(reference.floorLossDb === 0
      ? []
      : [["floors", minus(reference.floorLossDb), floorWords(floors)] as const]),
    ["enclosure", minus(budget.enclosureLossDb), setting.profile.enclosure.value],
    ["polarisation", minus(budget.polarisationLossDb), "at most 10 dB indoors (assumed)"],
    ["receiver antenna", dBi(budget.rxGainDbi), antennaWords.rx ?? "the profile's, in every direction"],
    ["received", dBm(budget.receivedDbm), "local mean"],
  ];
}

function measureRows({ plan, fadeWords }: ChannelReport): Row[] {
  const { setting, link } = plan;
  const [budget, reference] = [link.budget!, link.reference!];
  const share = exactPercent(setting.reliability);
  const left = (marginDb: number): string =>
    marginDb === -Infinity ? "none left" : `leaves ${dB(marginDb)}`;
  return [
    ["sensitivity", dBm(budget.sensitivityDbm), left(budget.sensitivityMarginDb)],
    [
      "interference + noise",
      dBm(budget.interferenceDbm),
      `exceeded ${exactPercent(setting.busyShareRatio)} of the time`,
    ],
    ["required C/I", dB(budget.requiredCiDb), left(budget.interferenceMarginDb)],
    [`fade, ${share}`, minus(budget.fadeAllowanceDb), fadeWords],
    [
      "to spare",
      dB(budget.workingMarginDb),
      `${budget.verdict}; held at ${heldPercent(reference.heldRatio)} of positions`,
    ],
  ];
}

function floorWords(floors: ChannelReport["plan"]["setting"]["site"]["floors"]): string {
  if (floors === null) return "ITU-R P.1238";
  return `${floors.floorCount}, ${floors.building} building, ITU-R P.1238`;
}
