import type { Issue } from "../issues/index.js";
import type { CommonOptions, Context } from "./context.js";
import { CliError, EXIT } from "./exit.js";
import type { ExitCode } from "./exit.js";
import { jsonText } from "./json-text.js";
import { deliver } from "./output.js";

/**
 * Runs a command. Where its input is of no use, with --json the issues still leave as one value, so that a
 * program need not read standard error.
 */
export async function runToEnd(
  context: Context<CommonOptions>,
  schema: string,
  run: (context: Context<CommonOptions>) => Promise<ExitCode>,
): Promise<ExitCode> {
  try {
    return await run(context);
  } catch (error) {
    const { options, io } = context;
    if (error instanceof CliError && error.issues.length > 0 && options.json === true)
      await deliver(jsonText({ schema, issues: error.issues }), options.output, io);
    throw error;
  }
}

/** Exit code of a command that has printed its result: --strict turns rejected rows into bad data. */
export function exitFor({ options }: Context<CommonOptions>, issues: readonly Issue[]): ExitCode {
  const faulty = issues.some(({ action }) => action === "row skipped" || action === "stopped");
  return options.strict === true && faulty ? EXIT.badData : EXIT.ok;
}
