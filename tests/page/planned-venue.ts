import { PassThrough } from "node:stream";
import type { Context } from "../../src/cli/context.js";
import { planReport } from "../../src/cli/plan-report.js";
import type { PlanSetting } from "../../src/cli/plan-report.js";
import { venueJob } from "../../src/cli/venue-options.js";
import type { VenueOptions } from "../../src/cli/venue-options.js";
import { venueScenes } from "../../src/cli/venue-scenes.js";
import type { PlanReport } from "../../src/report/index.js";

/** The whole plan of a venue file, as the command makes it, without a folder. */
export async function plannedVenue(path: string, setting: Partial<PlanSetting> = {}): Promise<PlanReport> {
  const stream = (): PassThrough => new PassThrough().resume();
  const io = { out: stream(), err: stream(), stdin: stream(), env: {} };
  const options: VenueOptions = {};
  const job = await venueJob(path, options, io);
  const context = {
    options,
    io,
    words: [path],
    files: [],
    command: "plan",
  } as unknown as Context<VenueOptions>;
  const scenes = await venueScenes(context, job.loaded, job.loaded.venue.systems);
  return planReport(job, scenes, {
    program: "0.0.0",
    madeAt: null,
    revision: null,
    showsNames: false,
    inputs: [],
    ...setting,
  });
}
