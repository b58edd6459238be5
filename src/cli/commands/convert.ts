import { writeScanCsv } from "../../scan/index.js";
import { tellIssues } from "../context.js";
import type { CommonOptions, Context } from "../context.js";
import { CliError, EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { jsonText } from "../json-text.js";
import { mapOption } from "../map-option.js";
import { exitFor } from "../outcome.js";
import { deliver } from "../output.js";
import { readScans } from "../read-scans.js";

/** Any scan that can be read, as one scan CSV. */
export async function runConvert(context: Context<CommonOptions>): Promise<ExitCode> {
  const { options, io } = context;
  const imports = await readScans(context, mapOption(options));
  const issues = imports.flatMap((scan) => [...scan.issues]);
  const readings = imports.flatMap((scan) => [...scan.readings]);
  if (readings.length === 0) {
    const message = "a power sweep holds no networks, so there is nothing to write as a scan CSV";
    const next = "stillband survey reads it as it is";
    throw new CliError(EXIT.badData, message, next, issues);
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
  await deliver(options.json === true ? jsonText(json) : writeScanCsv(readings), options.output, io);
  if (options.json !== true) await tellIssues(context, issues);
  return exitFor(context, issues);
}
