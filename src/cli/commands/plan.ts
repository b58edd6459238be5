import { planJson, planText } from "../../report/index.js";
import type { PlanReport } from "../../report/index.js";
import { parseIsoTime } from "../../scan/index.js";
import { tellIssues, textStyle, unitOf } from "../context.js";
import type { Context } from "../context.js";
import { EXIT } from "../exit.js";
import type { ExitCode } from "../exit.js";
import { write } from "../io.js";
import { jsonText } from "../json-text.js";
import { exitFor } from "../outcome.js";
import { defaultFolder, planFolders, planPlaces } from "../plan-files.js";
import type { PlanPlaces } from "../plan-files.js";
import { planInputs } from "../plan-inputs.js";
import { planReport } from "../plan-report.js";
import { hangWorks, patchWorks } from "../sheets-work.js";
import { venueJob } from "../venue-options.js";
import type { VenueOptions } from "../venue-options.js";
import { venueScenes } from "../venue-scenes.js";
import { systemsAsked } from "../venue-systems.js";
import { VERSION } from "../version.js";
import { badOption, filledWord } from "../words.js";
import { requireFolderFree, writeFolder } from "../write-folder.js";

export interface PlanOptions extends VenueOptions {
  readonly force?: boolean;
  readonly date?: string;
  readonly revision?: string;
  readonly showNames?: boolean;
  readonly svg?: string;
  readonly check?: boolean;
}

/** The whole job of a venue: a folder with the report page, the plan file and the crew's tables. */
export async function runPlan(context: Context<PlanOptions>): Promise<ExitCode> {
  const { options, io, words } = context;
  const places = placesOf(words[0]!, options);
  const madeAt = options.date === undefined ? null : dateWord(options.date);
  for (const { path, content } of planPlaces(places)) await requireFolderFree(path, content, io);
  const job = await venueJob(words[0]!, options, io);
  const { venue, inputs } = job.loaded;
  const scenes = await venueScenes(context, job.loaded, systemsAsked(venue, undefined));
  const report = planReport(job, scenes, {
    program: VERSION,
    madeAt,
    revision: options.revision ?? null,
    showsNames: options.showNames === true,
    inputs: await planInputs(inputs, io),
  });
  const json = planJson(report);
  const folders = await planFolders(places, report, json);
  for (const { path, content } of folders) await writeFolder(path, content, io);
  if (options.json === true) await write(io.out, jsonText(json));
  else {
    const units = unitOf({ units: options.units ?? venue.units });
    // The folder is no output that the text goes to.
    const shown = { units, ...(options.color !== undefined && { color: options.color }) };
    const written = folders.map(({ path, told }) => ({ folder: path, files: told }));
    await write(io.out, planText(report, written, await textStyle({ ...context, options: shown })));
    await tellIssues(context, report.issues);
  }
  return options.check === true && !works(report) ? EXIT.checkFailed : exitFor(context, report.issues);
}

/** With --json the value is the output, and a folder is written only where one is named. */
function placesOf(venuePath: string, { output, json, svg, force }: PlanOptions): PlanPlaces {
  const folder = output ?? (json === true ? null : defaultFolder(venuePath));
  if (folder === "-")
    throw badOption("--output", "a folder's name", "-", "job-12 (--json prints the plan file)");
  return {
    folder: folder === null ? null : filledWord("--output", folder, "a folder's name", "job-12"),
    pictures: svg === undefined ? null : filledWord("--svg", svg, "a folder's name", "job-12-pictures"),
    force: force === true,
  };
}

function dateWord(text: string): string {
  if (parseIsoTime(text) === null)
    throw badOption("--date", "a date as ISO 8601 writes it", text, "2026-03-07");
  return text;
}

/** Does every receiver have a margin and every luminaire an address, and may each one hang? */
function works({ rooms, patch, hang }: PlanReport): boolean {
  return (
    rooms.plan.excluded.length === 0 &&
    rooms.plan.systems.every(
      ({ workingMarginDb, lostReceivers }) => workingMarginDb >= 0 && lostReceivers.length === 0,
    ) &&
    (patch === null || patchWorks(patch)) &&
    (hang === null || hangWorks(hang))
  );
}
