import type { ReadingsImport } from "../../commissioning/index.js";
import { fitJson, fitText } from "../../report/index.js";
import type { LengthUnit } from "../../report/index.js";
import { finish, unitOf } from "../context.js";
import type { Context } from "../context.js";
import { CliError, EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { fitFigures, readingColumns } from "../fit-options.js";
import type { FitFigures, FitOptions } from "../fit-options.js";
import { fitReport } from "../fit-report.js";
import { jsonText } from "../json-text.js";
import { loadRadio } from "../load-profile.js";
import { loadVenue } from "../load-venue.js";
import { exitFor } from "../outcome.js";
import { deliver } from "../output.js";
import { readingsFile } from "../readings-file.js";
import { walkPlaces } from "../walk-places.js";
import { badOption } from "../words.js";

/** A log-distance model of the building from a walk test, or why there is none and what to measure next. */
export async function runFit(context: Context<FitOptions>): Promise<ExitCode> {
  const { options, io, words } = context;
  const [path = "-"] = words;
  const loaded = options.venue === undefined ? null : await loadVenue(options.venue, io);
  const units = options.units === undefined && loaded !== null ? loaded.venue.units : unitOf(options);
  const figures = fitFigures(options, units);
  const radio = await loadRadio(options, io);
  const readings = await readWalk(path, figures, units, context);
  const unknown = figures.ignoredLines.find((line) => !readings.readings.some((each) => each.line === line));
  if (unknown !== undefined)
    throw badOption(
      "--ignore-line",
      "a line with a reading",
      String(unknown),
      String(readings.readings[0]!.line),
    );
  const issues = [...readings.issues, ...radio.issues, ...(loaded?.issues ?? [])];
  const code = exitFor(context, issues);
  const { modelPath, reportPath } = filesOf(options);
  const report = fitReport({
    ...{ readings, profile: radio.profile, figures, units, issues },
    countsEnclosure: namesEnclosure(options),
    transmitter: { name: options.transmitter ?? null, at: figures.transmitterAt },
    places: walkPlaces(loaded?.venue ?? null),
    withWalls: options.withoutWalls !== true,
    modelPath: code === EXIT.ok ? modelPath : null,
  });
  if (report.modelPath !== null) await deliver(jsonText(report.model!), report.modelPath, io);
  await finish(
    { ...context, options: reportOptions(options, units, reportPath) },
    { json: () => fitJson(report), text: (style) => fitText(report, style), issues },
  );
  if (report.fit.refusal === null) return code;
  throw new CliError(EXIT.badData, `no model: ${report.fit.refusal.reason}`, report.fit.refusal.next);
}

/** The options by which the report is printed. */
function reportOptions(options: FitOptions, units: LengthUnit, reportPath: string | undefined): FitOptions {
  const told: { -readonly [Key in keyof FitOptions]: FitOptions[Key] } = { ...options, units };
  if (reportPath === undefined) delete told.output;
  return told;
}

/** The model is the result: without --json, `-o FILE.json` is its file, and the report is printed. */
function filesOf({ model, output, json }: FitOptions): {
  modelPath: string | null;
  reportPath: string | undefined;
} {
  if (model === "" || model === "-") throw badOption("--model", "a file's name", model, "model.json");
  const isModel = model === undefined && json !== true && output !== undefined && /\.json$/i.test(output);
  return isModel
    ? { modelPath: output, reportPath: undefined }
    : { modelPath: model ?? null, reportPath: output };
}

/** A receiver carried about is seldom in its canopy: its loss counts only where an option names it. */
function namesEnclosure({ enclosure, set = [] }: FitOptions): boolean {
  return enclosure !== undefined || set.some((each) => /^\s*enclosure/i.test(each));
}

function readWalk(
  path: string,
  { floorDbm }: FitFigures,
  units: LengthUnit,
  { options, io }: Context<FitOptions>,
): Promise<ReadingsImport> {
  const columns = readingColumns(options);
  return readingsFile(path, { units, ...(floorDbm !== null && { floorDbm }), columns }, io, HEADER);
}

const HEADER = 'a CSV with the columns distance_m, received_dbm; "not heard" where there was nothing';
