import type { Issue } from "../issues/index.js";
import { deliver } from "./files.js";
import { EXIT } from "./exit.js";
import type { CliError, ExitCode } from "./exit.js";
import type { CommonOptions, Context } from "./context.js";

/**
 * Ends a command whose scans are of no use: with --json the issues still leave as one value, so that a
 * program need not read standard error.
 */
export async function refuse(
  context: Context<CommonOptions>,
  schema: string,
  failure: CliError,
  issues: readonly Issue[],
): Promise<never> {
  if (context.options.json === true)
    await deliver(`${JSON.stringify({ schema, issues }, null, 2)}\n`, context.options.output, context.io);
  throw failure;
}

/** Exit code of a command that has printed its result: --strict turns rejected rows into bad data. */
export function exitFor(context: Context<CommonOptions>, issues: readonly Issue[]): ExitCode {
  const faulty = issues.some(({ severity, action }) => severity === "error" && action !== "stated");
  return context.options.strict === true && faulty ? EXIT.badData : EXIT.ok;
}
