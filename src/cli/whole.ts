import { runCompletion } from "./commands/completion.js";
import { runFit } from "./commands/fit.js";
import { runForm } from "./commands/form.js";
import { runHang } from "./commands/hang.js";
import { runInit } from "./commands/init.js";
import { runLink } from "./commands/link.js";
import { runPatch } from "./commands/patch.js";
import { runPlace } from "./commands/place.js";
import { runPlan } from "./commands/plan.js";
import { runRooms } from "./commands/rooms.js";
import { runVerify } from "./commands/verify.js";
import type { ExitCode } from "./exit.js";
import type { Io } from "./io.js";
import { runMain } from "./main.js";
import { QUICK_RUNS } from "./quick-runs.js";
import type { Runs } from "./run.js";
import { isVenueName } from "./venue-argument.js";
import { runVenueLink } from "./venue-link.js";

const RUNS: Runs = {
  ...QUICK_RUNS,
  completion: runCompletion,
  fit: runFit,
  form: runForm,
  hang: runHang,
  init: runInit,
  link: (context) => {
    const isVenue = context.words.length === 1 && isVenueName(context.words[0]!);
    return isVenue ? runVenueLink(context) : runLink(context);
  },
  patch: runPatch,
  place: runPlace,
  plan: runPlan,
  rooms: runRooms,
  verify: runVerify,
};

/** The command line with every command. */
export function main(argv: readonly string[], io: Io): Promise<ExitCode> {
  return runMain(argv, io, RUNS);
}
