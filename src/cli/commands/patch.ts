import { patchCsv, patchJson, patchLabelsText, patchText } from "../../report/index.js";
import type { PatchReport } from "../../report/index.js";
import type { Venue } from "../../venue/index.js";
import { finish, tellIssues } from "../context.js";
import type { Context } from "../context.js";
import { csvText, wantsCsv } from "../csv-text.js";
import { CliError, EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { loadVenue } from "../load-venue.js";
import { deliver } from "../output.js";
import { knownName, patchSetting } from "../patch-options.js";
import type { PatchOptions } from "../patch-options.js";
import { patchReport } from "../patch-report.js";

/** DMX addresses for a venue's luminaires: the sheet, the labels, the table. */
export async function runPatch(context: Context<PatchOptions>): Promise<ExitCode> {
  const { options, words, io } = context;
  const loaded = await loadVenue(words[0]!, io);
  requireLuminaires(loaded.venue);
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
  return options.check === true && !works(report) ? EXIT.checkFailed : EXIT.ok;
}

function requireLuminaires({ luminaires }: Venue): void {
  if (luminaires.length === 0)
    throw new CliError(
      EXIT.badData,
      "the venue file lists no luminaires: there is nothing to patch",
      "list them under luminaires, or in a table that it names; stillband init shows the form",
    );
}

function partOf(
  { room, system }: PatchOptions,
  { rooms, systems }: Venue,
): Pick<PatchOptions, "room" | "system"> {
  const names = (things: readonly { readonly name: string }[]): string[] => things.map(({ name }) => name);
  return {
    ...(room !== undefined && { room: knownName("--room", "room", room, names(rooms)) }),
    ...(system !== undefined && { system: knownName("--system", "system", system, names(systems)) }),
  };
}

/** Has every luminaire that is shown an address that none disputes? */
function works({ patch: { addresses } }: PatchReport): boolean {
  return (
    addresses.rows.every(({ address }) => address !== null) &&
    addresses.conflicts.every(({ severity }) => severity !== "error")
  );
}
