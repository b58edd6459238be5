import { isPathModelRecord, pathModelPredictionDb, readingIntervalDb } from "../commissioning/index.js";
import type { Interval, ReadingIntervalDb } from "../commissioning/index.js";
import { indoorAbgRow, pathModelSigmaDb, referenceFadeLaw } from "../propagation/index.js";
import type { FadeLaw } from "../propagation/index.js";
import type { ReceiverForecast } from "../report/index.js";
import { pathModelIn } from "../venue/index.js";
import type { FadeTerms, ReceiverLink, SystemLinks, VenueSite } from "../venue/index.js";

/** What predictions rest on beside the links. */
export interface PredictionTerms extends Pick<FadeTerms, "fadeLaw" | "hiddenFadeLaw"> {
  /** That the links were planned in; whose crowd doesn't matter. */
  readonly site: VenueSite;
  /** Share of readings that the interval holds, 0.5 … 0.9999; 0.95 unless given. */
  readonly confidenceRatio?: number | undefined;
}

/**
 * What each receiver of a venue will read with nobody in the audience: the local mean that its link gives, and the
 * interval in which one reading lies. How surely the local mean is known comes from the room's fitted model (σ of
 * a new place, t with the fit's degrees of freedom), else from the σ that its model names, else it is assumed: that
 * of ITU-R P.1238-11 for an office with or without line of sight. A spot's small-scale fading comes on top by the
 * law that the plan has for it, in sight or hidden; of a law with shadowing in it, only the fading, and its σ where
 * the model names none. An error in power, antennas, canopy or walls is not in it: it moves a whole room alike.
 * @returns in the order of the links; a receiver without any signal, in an antenna's true null, is left out
 */
export function predictReceivers(links: readonly SystemLinks[], terms: PredictionTerms): ReceiverForecast[] {
  const { fadeLaw = referenceFadeLaw, hiddenFadeLaw = HIDDEN } = terms;
  const laws = { inSight: fadeLaw, hidden: hiddenFadeLaw };
  const spreads = new Map<FadeLaw, ReadingIntervalDb>();
  const known = new Map<string, Interval>();
  return links.flatMap(({ system, receivers }) =>
    receivers.flatMap((one): ReceiverForecast[] => {
      const { receiver, judged } = one;
      const { receivedDbm, workingMarginDb } = judged.budget;
      if (!Number.isFinite(receivedDbm)) return [];
      const sight = judged.link.inSight ? "inSight" : "hidden";
      const law = laws[sight];
      const mean = localMean(one, law, terms);
      const spread = remembered(spreads, law, () => readingIntervalDb(smallScale(law)));
      const offDb = remembered(known, `${sight} ${mean.sigmaDb} ${mean.freedomCount}`, () =>
        spread({ ...mean, confidenceRatio: terms.confidenceRatio }),
      );
      const predictedDbm = receivedDbm + judged.link.lines.crowdLossDb;
      return [
        {
          ...{ receiver: receiver.name, system: system.name, room: receiver.room, at: receiver.at },
          ...{ predictedDbm, workingMarginDb },
          intervalDbm: [predictedDbm + offDb[0], predictedDbm + offDb[1]],
          inSight: judged.link.inSight,
          ...mean,
        },
      ];
    }),
  );
}

function remembered<Key, Value>(known: Map<Key, Value>, key: Key, make: () => Value): Value {
  if (!known.has(key)) known.set(key, make());
  return known.get(key)!;
}

/** The same by the receiver's name. */
export function forecastsOf(
  links: readonly SystemLinks[],
  terms: PredictionTerms,
): ReadonlyMap<string, ReceiverForecast> {
  return new Map(predictReceivers(links, terms).map((one) => [one.receiver, one]));
}

const HIDDEN: FadeLaw = { law: "rayleigh" };

type LocalMean = Pick<
  ReceiverForecast,
  "basis" | "sigmaDb" | "freedomCount" | "isExtrapolated" | "pathLossIntervalDb"
>;

function localMean(
  { receiver, judged: { link } }: ReceiverLink,
  law: FadeLaw,
  { site, confidenceRatio = 0.95 }: PredictionTerms,
): LocalMean {
  const model = pathModelIn(site, receiver.room);
  if (isPathModelRecord(model)) {
    const path = pathModelPredictionDb(model, link.distanceM, { confidenceRatio });
    const { sigmaDb, isExtrapolated } = path;
    const floorLossDb = link.obstacles.floorLossDb;
    const pathLossIntervalDb: Interval = [path.intervalDb[0] + floorLossDb, path.intervalDb[1] + floorLossDb];
    return {
      ...{ basis: "fitted", sigmaDb, freedomCount: model.freedomCount, isExtrapolated, pathLossIntervalDb },
    };
  }
  const ownDb = pathModelSigmaDb(model) ?? law.sigmaDb ?? null;
  const unfitted = { freedomCount: null, isExtrapolated: false, pathLossIntervalDb: null };
  if (ownDb !== null) return { basis: "path-model", sigmaDb: ownDb, ...unfitted };
  const assumedDb = indoorAbgRow("office", link.inSight ? "LoS" : "NLoS").sigmaDb;
  return { basis: "assumed", sigmaDb: assumedDb, ...unfitted };
}

/** Without the shadowing that a law may hold: it counts with the local mean. */
function smallScale(law: FadeLaw): FadeLaw | null {
  if (law.law === "lognormal") return null;
  return law.law === "rayleigh-lognormal" ? HIDDEN : law;
}
