import { writeScanCsv } from "../../scan/index.js";
import { tellIssues } from "../context.js";
import type { CommonOptions, Context } from "../context.js";
import type { ExitCode } from "../exit.js";
import { deliver } from "../files.js";
import { exitFor, refuse } from "../outcome.js";
import { readScans } from "../read-scans.js";

/** Any scan that can be read, as one scan CSV. */
export async function runConvert(context: Context<CommonOptions>): Promise<ExitCode> {
  const { options, files, io } = context;
  const { imports, failure } = await readScans(files, io);
  const issues = imports.flatMap((scan) => [...scan.issues]);
  if (failure !== null) return refuse(context, "stillband/convert@1", failure, issues);
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
  await deliver(
    options.json === true ? `${JSON.stringify(json, null, 2)}\n` : writeScanCsv(readings),
    options.output,
    io,
  );
  if (options.json !== true) await tellIssues(context, issues);
  return exitFor(context, issues);
}
