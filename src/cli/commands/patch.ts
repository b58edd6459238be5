import { patchCsv, patchJson, patchLabelsText, patchText } from "../../report/index.js";
import { finish, tellIssues } from "../context.js";
import type { Context } from "../context.js";
import { csvText, wantsCsv } from "../csv-text.js";
import { EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { loadCrewVenue, partOf } from "../crew-venue.js";
import { deliver } from "../output.js";
import { patchSetting } from "../patch-options.js";
import type { PatchOptions } from "../patch-options.js";
import { patchReport } from "../patch-report.js";
import { patchWorks } from "../sheets-work.js";

/** DMX addresses for a venue's luminaires: the sheet, the labels, the table. */
export async function runPatch(context: Context<PatchOptions>): Promise<ExitCode> {
  const { options, words, io } = context;
  const loaded = await loadCrewVenue(words[0]!, io, "patch");
  const report = patchReport(loaded, patchSetting(options, loaded.venue), partOf(options, loaded.venue));
  if (options.json !== true && wantsCsv(options)) {
    await deliver(csvText(patchCsv(report)), options.output, io);
    await tellIssues(context, report.issues);
  } else
    await finish(context, {
      json: () => patchJson(report),
      text: (style) => (options.labels === true ? patchLabelsText : patchText)(report, style),
      issues: report.issues,
    });
  return options.check === true && !patchWorks(report) ? EXIT.checkFailed : EXIT.ok;
}
