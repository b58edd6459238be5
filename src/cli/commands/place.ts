import { ArgumentError } from "../../issues/index.js";
import { placeJson, placeText } from "../../report/index.js";
import type { LengthUnit } from "../../report/index.js";
import { antennaWord } from "../antenna-word.js";
import { finish, unitOf } from "../context.js";
import type { Context } from "../context.js";
import { CliError, EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { exitFor } from "../outcome.js";
import { placeReport } from "../place-report.js";
import type { PlaceAsked } from "../place-report.js";
import { venueJob } from "../venue-options.js";
import type { VenueOptions } from "../venue-options.js";
import { systemsAsked, systemScenes } from "../venue-systems.js";
import { badOption, lengthWord } from "../words.js";

export interface PlaceOptions extends VenueOptions {
  readonly system?: string;
  readonly step?: string;
  readonly height?: string;
  readonly antenna?: string;
  readonly candidatesOnly?: boolean;
  readonly grid?: boolean;
}

/** Where each system's transmitter should stand. */
export async function runPlace(context: Context<PlaceOptions>): Promise<ExitCode> {
  const { options, io, words } = context;
  const job = await venueJob(words[0]!, options, io);
  const { venue } = job.loaded;
  const units = unitOf({ units: options.units ?? venue.units });
  const asked = askedOf(options, units);
  const names = new Set(systemsAsked(venue, options.system).map(({ name }) => name));
  const { antenna } = asked;
  const loaded = { ...job.loaded, ...(antenna && { furtherAntennas: [antenna] }) };
  const all = await systemScenes(context, loaded, venue.systems);
  const systems = all.filter(([{ name }]) => names.has(name));
  const report = withFewerPoints(options.step, () => placeReport(job, systems, all, asked, units));
  const { issues } = report;
  await finish(
    { ...context, options: { ...options, units } },
    { json: () => placeJson(report), text: (style) => placeText(report, style), issues },
  );
  return exitFor(context, issues);
}

/** A step too fine for a room is the user's mistake, not ours. */
function withFewerPoints<Report>(step: string | undefined, make: () => Report): Report {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof ArgumentError && error.argument === "stepM" && step !== undefined)) throw error;
    throw badOption("--step", error.expected, step, "0.5m");
  }
}

function askedOf(
  { step, height, antenna, candidatesOnly, grid }: PlaceOptions,
  units: LengthUnit,
): PlaceAsked {
  if (candidatesOnly === true && grid === true)
    throw new CliError(
      EXIT.usage,
      "--candidates-only and --grid exclude each other",
      "give one of them, or neither for both",
    );
  return {
    stepM: step === undefined ? STEP_M : lengthWord("--step", step, units),
    heightM: height === undefined ? HEIGHT_M : lengthWord("--height", height, units),
    ...(antenna !== undefined && { antenna: antennaWord("--antenna", antenna) }),
    among: candidatesOnly === true ? "candidates" : grid === true ? "grid" : "both",
  };
}

const STEP_M = 0.5;
/** Above heads (common practice, no source). */
const HEIGHT_M = 3;
