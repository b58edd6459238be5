import { comparePlanRecords, nameKey, planRecord, readPlanRecord } from "../commissioning/index.js";
import type { PlanRecord } from "../commissioning/index.js";
import { formatIssue } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import { fadeLawWords, pathModelWords } from "../propagation/index.js";
import { CROWDS } from "../scan/index.js";
import type { Crowd } from "../scan/index.js";
import type { VerifiedPlan } from "../report/index.js";
import type { VenueChannelPlan } from "../venue/index.js";
import { CliError, EXIT } from "./exit.js";
import { inputText, STDIN_NAME } from "./input.js";
import type { Io } from "./io.js";
import { planAssumptions } from "./plan-assumptions.js";
import { planInputs } from "./plan-inputs.js";
import { plannedSystems } from "./planned-record.js";
import { BURST_MS } from "./rooms-report.js";
import { fullTerms } from "./venue-options.js";
import type { VenueJob } from "./venue-options.js";
import type { VenueScene } from "./venue-scene.js";
import { VERSION } from "./version.js";

/** A plan file, read. */
export interface PlanFile {
  readonly source: string;
  readonly record: PlanRecord;
}

/** @throws {CliError} exit 66 where it can't be had, 65 where it is no plan file, with everything wrong with it */
export async function planFile(path: string, io: Io): Promise<PlanFile> {
  const source = path === "-" ? STDIN_NAME : path;
  const { plan, issues } = readPlanRecord(parsed(await inputText(path, io), source), { source });
  const faults = plan === null ? issues : receiverFaults(plan, source);
  if (plan !== null && faults.length === 0) return { source, record: plan };
  throw new CliError(EXIT.badData, faults.map(formatIssue).join("\n"), FORM, faults);
}

function parsed(text: string, source: string): unknown {
  try {
    return JSON.parse(text.replace(/^\ufeff/, ""));
  } catch {
    const issue: Issue = {
      ...{ code: "unreadable", severity: "error", source, expected: "JSON, as stillband plan writes it" },
      action: "stopped",
    };
    throw new CliError(EXIT.badData, formatIssue(issue), FORM, [issue]);
  }
}

/** What a file edited by hand may have wrong: an interval beside its prediction, one receiver twice. */
function receiverFaults({ receivers }: PlanRecord, source: string): Issue[] {
  const seen = new Set<string>();
  return receivers.flatMap(({ receiver, predictedDbm, intervalDbm: [low, high] }, index): Issue[] => {
    const key = nameKey(receiver);
    const isTwice = seen.has(key);
    seen.add(key);
    const at = { code: "contradiction", severity: "error", source, action: "stopped" } as const;
    const column = `receivers[${index}]`;
    return [
      ...(isTwice
        ? [{ ...at, column: `${column}.receiver`, value: receiver, expected: "each receiver once" }]
        : []),
      ...(low <= predictedDbm && predictedDbm <= high
        ? []
        : [{ ...at, column: `${column}.intervalDbm`, expected: `an interval around ${predictedDbm}` }]),
    ];
  });
}

const FORM = "the plan.json that stillband plan wrote for this venue";

/** The crowd that a plan was made for; null where it doesn't say. */
export function plannedCrowd({ assumptions }: PlanRecord): Crowd | null {
  const value = assumptions.find(({ name }) => name === "plan: crowd")?.value;
  return CROWDS.find((crowd) => crowd === value) ?? null;
}

/**
 * The earlier plan against what the same files give now.
 * @param plan of the venue as filed, with nothing taken from the earlier plan
 * @param receivers as they are predicted now
 */
export async function verifiedPlan(
  { source, record }: PlanFile,
  job: VenueJob,
  scene: VenueScene,
  plan: VenueChannelPlan,
  receivers: PlanRecord["receivers"],
  io: Io,
): Promise<VerifiedPlan> {
  const { crowd, loaded } = job;
  const site = scene.siteWith(crowd);
  const { reliability, busyShareRatio, fadeLaw } = fullTerms(job);
  const now = planRecord({
    program: VERSION,
    madeAt: null,
    inputs: await planInputs(loaded.inputs, io),
    assumptions: planAssumptions({
      venue: scene.venue,
      crowd,
      terms: { reliability, busyShareRatio, burstMs: BURST_MS },
      words: { path: pathModelWords(site.pathModel), fade: fadeLawWords(fadeLaw) },
      handsetChannels: site.handsetChannels ?? [],
    }),
    systems: plannedSystems({ plan, rooms: [] }),
    receivers,
  });
  return { source, record, comparison: comparePlanRecords(record, now) };
}
