import { requireFinite } from "../issues/index.js";
import { SLACK } from "../units/index.js";
import type { ReceivedLines, ReceivedTerms } from "./received.js";
import { receivedDbm, receivedLines } from "./received.js";
import type { Verdict } from "./verdict.js";
import { verdictOf } from "./verdict.js";

/** What sets the working margin: the receiver's own sensitivity, or what else is on the band. */
export type Limit = "range" | "interference";

/** The terms of a link and what it is measured against. */
export interface LinkTerms extends ReceivedTerms {
  readonly sensitivityDbm: number;
  /** Interference plus receiver noise in the receiver's passband at the busy share of time. */
  readonly interferenceDbm: number;
  readonly requiredCiDb: number;
  readonly fadeAllowanceDb: number;
}

/** A link budget, line by line. */
export interface LinkBudget extends ReceivedLines {
  /** Power − feeder loss + antenna gain, towards the receiver. */
  readonly eirpDbm: number;
  readonly receivedDbm: number;
  readonly sensitivityDbm: number;
  readonly sensitivityMarginDb: number;
  readonly interferenceDbm: number;
  readonly requiredCiDb: number;
  readonly interferenceMarginDb: number;
  readonly fadeAllowanceDb: number;
  readonly workingMarginDb: number;
  readonly limit: Limit;
  readonly verdict: Verdict;
}

/**
 * The link budget of one path:
 * sensitivityMarginDb = receivedDbm − sensitivityDbm,
 * interferenceMarginDb = receivedDbm − interferenceDbm − requiredCiDb,
 * workingMarginDb = min(sensitivityMarginDb, interferenceMarginDb) − fadeAllowanceDb.
 * The limit is `interference` where that margin is the smaller by more than 1e-9 dB, else `range`.
 * @throws {ArgumentError} when a term is not finite (an antenna's null may be −Infinity dBi)
 * @example linkBudget({ txPowerDbm: 18, pathLossDb: 70, sensitivityDbm: -90, interferenceDbm: -75, requiredCiDb: 14, fadeAllowanceDb: 5 }).workingMarginDb; // => 4
 */
export function linkBudget(terms: LinkTerms): LinkBudget {
  const { sensitivityDbm, interferenceDbm, requiredCiDb, fadeAllowanceDb } = terms;
  for (const [name, value] of Object.entries({
    sensitivityDbm,
    interferenceDbm,
    requiredCiDb,
    fadeAllowanceDb,
  }))
    requireFinite(name, value);
  const lines = receivedLines(terms);
  const levelDbm = receivedDbm(terms);
  const sensitivityMarginDb = levelDbm - sensitivityDbm;
  const interferenceMarginDb = levelDbm - interferenceDbm - requiredCiDb;
  const workingMarginDb = Math.min(sensitivityMarginDb, interferenceMarginDb) - fadeAllowanceDb;
  return {
    ...lines,
    eirpDbm: lines.txPowerDbm - lines.txFeederLossDb + lines.txGainDbi,
    receivedDbm: levelDbm,
    sensitivityDbm,
    sensitivityMarginDb,
    interferenceDbm,
    requiredCiDb,
    interferenceMarginDb,
    fadeAllowanceDb,
    workingMarginDb,
    limit: interferenceDbm + requiredCiDb > sensitivityDbm + SLACK ? "interference" : "range",
    verdict: verdictOf(workingMarginDb),
  };
}
