import { writeScanCsv } from "../../scan/index.js";
import { tellIssues } from "../context.js";
import type { CommonOptions, Context } from "../context.js";
import { CliError, EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { deliver } from "../files.js";
import { mapOption } from "../map-option.js";
import { exitFor, refuse } from "../outcome.js";
import { readScans } from "../read-scans.js";

/** Any scan that can be read, as one scan CSV. */
export async function runConvert(context: Context<CommonOptions>): Promise<ExitCode> {
  const { options, files, io } = context;
  const { imports, failure } = await readScans(files, io, mapOption(options));
  const issues = imports.flatMap((scan) => [...scan.issues]);
  if (failure !== null) return refuse(context, "stillband/convert@1", failure, issues);
  const readings = imports.flatMap((scan) => [...scan.readings]);
  if (readings.length === 0) {
    const message = "a power sweep holds no networks, so there is nothing to write as a scan CSV";
    const next = "stillband survey reads it as it is";
    return refuse(context, "stillband/convert@1", new CliError(EXIT.badData, message, next), issues);
  }
  const counts = imports.map(
    ({ source, format, rowCount, rejectedCount, outOfBandCount, readings: used }) => ({
      source,
      format,
      rowCount,
      usedCount: used.length,
      rejectedCount,
      outOfBandCount,
    }),
  );
  const json = { schema: "stillband/convert@1", issues, files: counts, readings };
  await deliver(
    options.json === true ? `${JSON.stringify(json, null, 2)}\n` : writeScanCsv(readings),
    options.output,
    io,
  );
  if (options.json !== true) await tellIssues(context, issues);
  return exitFor(context, issues);
}
