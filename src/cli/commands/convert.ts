import { writeScanCsv } from "../../scan/index.js";
import { tellIssues } from "../context.js";
import type { CommonOptions, Context } from "../context.js";
import type { ExitCode } from "../exit.js";
import { jsonText } from "../json-text.js";
import { exitFor } from "../outcome.js";
import { deliver } from "../output.js";
import { readScans } from "../read-scans.js";

/** Any scan that can be read, as one scan CSV. */
export async function runConvert(context: Context<CommonOptions>): Promise<ExitCode> {
  const { options, io } = context;
  const imports = await readScans(context);
  const issues = imports.flatMap((scan) => [...scan.issues]);
  const readings = imports.flatMap((scan) => [...scan.readings]);
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
