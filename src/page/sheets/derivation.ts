import { dB, dBi, dBm, exactPercent, minus } from "../../report/index.js";
import type { PlanReport } from "../../report/index.js";

type Links = PlanReport["links"];
type ReceiverLinks = Links["systems"][number]["receivers"][number];

/** What a signal loses on its way; what is nothing goes without saying. */
const LOSSES = [
  ["txFeederLossDb", "feeder"],
  ["pathLossDb", "path"],
  ["wallLossDb", "walls"],
  ["enclosureLossDb", "canopy"],
  ["crowdLossDb", "audience"],
  ["polarisationLossDb", "polarisation"],
] as const;

/** How a receiver's margin comes about, in one sentence. */
export function derivationWords({ judged }: ReceiverLinks, { terms }: Pick<Links, "terms">): string {
  const { budget } = judged;
  const losses = LOSSES.flatMap(([key, what]) =>
    budget[key] === 0 ? [] : [`${what} ${minus(budget[key])}`],
  );
  const sum = [
    `power ${dBm(budget.txPowerDbm)}`,
    `antenna ${dBi(budget.txGainDbi)}`,
    ...losses,
    `receiver antenna ${dBi(budget.rxGainDbi)}`,
  ];
  const received = `received ${dBm(budget.receivedDbm)} = ${sum.join(", ")}`;
  const heard = `interference and noise ${dBm(budget.interferenceDbm)}, exceeded ${exactPercent(terms.busyShareRatio)} of the time; C/I needed ${dB(budget.requiredCiDb)}, leaves ${left(budget.interferenceMarginDb)}`;
  const sense = `sensitivity ${dBm(budget.sensitivityDbm)}, leaves ${left(budget.sensitivityMarginDb)}`;
  return `${received}; ${heard}; ${sense}; the lesser, less ${dB(budget.fadeAllowanceDb)} for fading at ${exactPercent(terms.reliability)} of positions: ${left(budget.workingMarginDb)} to spare`;
}

/** Of a receiver by its name, as on the plan; none where no link was judged. */
export function derivationOf(links: Links, system: string, receiver: string): string {
  const of = links.systems.find((one) => one.system.name === system);
  const link = of?.receivers.find((one) => one.receiver.name === receiver);
  return link === undefined ? "not judged" : derivationWords(link, links);
}

function left(marginDb: number): string {
  return marginDb === -Infinity ? "nothing" : dB(marginDb);
}
