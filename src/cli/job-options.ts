import type { PlanChannelOptions } from "../venue/index.js";
import { CliError, EXIT } from "./exit.js";
import { badOption, numberWord } from "./words.js";
import type { NumberSpec } from "./words.js";

/** The options that say how many receivers a job has, and how sure all of them shall be. */
export interface JobOptions {
  readonly reliability?: string;
  readonly receivers?: string;
  readonly reliabilityAll?: string;
}

const RECEIVERS: NumberSpec = {
  lowest: 1,
  highest: 10_000,
  expected: "a whole number of receivers, 1 to 10000",
  example: "20",
};
const RELIABILITY_ALL: NumberSpec = {
  lowest: 0.5,
  highest: 0.99999,
  expected: "the chance that all receivers hold, 0.5 to 0.99999",
  example: "0.99",
};

/**
 * The receivers of the job and, for all of them, the chance to hold.
 * @throws {CliError} exit 64 for a value out of range, and for a chance for all that stands without the number of
 *   receivers or beside a share for each
 */
export function jobSetting({
  reliability,
  receivers,
  reliabilityAll,
}: JobOptions): Pick<PlanChannelOptions, "receiverCount" | "allHoldProbability"> {
  const count =
    receivers === undefined ? {} : { receiverCount: numberWord("--receivers", receivers, RECEIVERS) };
  if (receivers !== undefined && !Number.isInteger(count.receiverCount))
    throw badOption("--receivers", RECEIVERS.expected, receivers, RECEIVERS.example);
  if (reliabilityAll === undefined) return count;
  if (reliability !== undefined)
    throw new CliError(
      EXIT.usage,
      "--reliability-all: expected no --reliability beside it: it sets the share for each receiver from the chance that all hold",
      `--reliability-all ${RELIABILITY_ALL.example} --receivers ${RECEIVERS.example}`,
    );
  if (receivers === undefined)
    throw new CliError(
      EXIT.usage,
      "--reliability-all: expected the number of receivers beside it",
      `--reliability-all ${RELIABILITY_ALL.example} --receivers ${RECEIVERS.example}`,
    );
  const allHoldProbability = numberWord("--reliability-all", reliabilityAll, RELIABILITY_ALL);
  return { ...count, allHoldProbability };
}
