import { hangCsv, hangJson, hangText } from "../../report/index.js";
import { finish, tellIssues, unitOf } from "../context.js";
import type { Context } from "../context.js";
import { csvText, wantsCsv } from "../csv-text.js";
import { EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { hangSetting, sheetsAsked } from "../hang-options.js";
import type { HangOptionWords } from "../hang-options.js";
import { hangReport } from "../hang-report.js";
import { hangWorks } from "../sheets-work.js";
import { loadCrewVenue, partOf } from "../crew-venue.js";
import { deliver } from "../output.js";
import { badOption } from "../words.js";

/** The crew's sheets of a venue: hang, circuits and cords, order, checks, trouble card. */
export async function runHang(context: Context<HangOptionWords>): Promise<ExitCode> {
  const { options, words, io } = context;
  const sheets = sheetsAsked(options.sheet);
  const isTable = options.json !== true && wantsCsv(options);
  if (isTable && sheets.length > 1)
    throw badOption(
      "--sheet",
      "one sheet for a table: hang, circuits, order, checks or trouble",
      "all",
      "hang",
    );
  unitOf(options);
  const loaded = await loadCrewVenue(words[0]!, io, "hang");
  const { venue } = loaded;
  const units = options.units === "m" || options.units === "ft" ? options.units : venue.units;
  const own = { ...context, options: { ...options, units } };
  const part = partOf(options, venue);
  const report = hangReport(loaded, hangSetting(options, venue, units), part, sheets);
  if (isTable) {
    await deliver(csvText(hangCsv(report, sheets[0]!, units)), options.output, io);
    await tellIssues(own, report.issues);
  } else
    await finish(own, {
      json: () => hangJson(report, units),
      text: (style) => hangText(report, style),
      issues: report.issues,
    });
  return options.check === true && !hangWorks(report) ? EXIT.checkFailed : EXIT.ok;
}
