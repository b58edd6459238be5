import { roomsJson, roomsText } from "../../report/index.js";
import { finish, unitOf } from "../context.js";
import type { Context } from "../context.js";
import type { ExitCode } from "../exit.js";
import { exitFor } from "../outcome.js";
import { roomsReport } from "../rooms-report.js";
import { venueJob } from "../venue-options.js";
import type { VenueOptions } from "../venue-options.js";
import { venueScenes } from "../venue-scenes.js";
import { systemsAsked } from "../venue-systems.js";
import { numberWord } from "../words.js";
import type { NumberSpec } from "../words.js";

export interface RoomsOptions extends VenueOptions {
  readonly timeLimit?: string;
}

const TIME_LIMIT: NumberSpec = {
  lowest: 0.1,
  highest: 3600,
  expected: "seconds to search for the best joint plan, 0.1 to 3600",
  example: "5",
};
const TIME_LIMIT_S = 5;

/** A venue's rooms side by side, and the jointly best channel for every system. */
export async function runRooms(context: Context<RoomsOptions>): Promise<ExitCode> {
  const { options, io, words } = context;
  const timeLimitS =
    options.timeLimit === undefined
      ? TIME_LIMIT_S
      : numberWord("--time-limit", options.timeLimit, TIME_LIMIT);
  const job = await venueJob(words[0]!, options, io);
  const scenes = await venueScenes(context, job.loaded, systemsAsked(job.loaded.venue, undefined));
  const scene = [...scenes.values()][0]!;
  const report = roomsReport(job, scenes, scene, { timeLimitS, nowMs: () => performance.now() });
  const units = unitOf({ units: options.units ?? job.loaded.venue.units });
  await finish(
    { ...context, options: { ...options, units } },
    { json: () => roomsJson(report), text: (style) => roomsText(report, style), issues: report.issues },
  );
  return exitFor(context, report.issues);
}
