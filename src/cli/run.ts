import type { CommonOptions, Context } from "./context.js";
import type { ExitCode } from "./exit.js";

/** Runs one command to its exit code. */
export type Run = (context: Context<CommonOptions>) => Promise<ExitCode>;

/** By the command's name. */
export type Runs = Readonly<Record<string, Run>>;
