import { Help } from "commander";
import type { Issue } from "../issues/index.js";
import { issueLines, plainPen } from "../report/index.js";
import type { LengthUnit, TextStyle } from "../report/index.js";
import { write } from "./io.js";
import type { Io } from "./io.js";
import { jsonText } from "./json-text.js";
import { deliver } from "./output.js";
import type { ScanArgument } from "./scan-arguments.js";
import { badOption } from "./words.js";

/** Options that every command takes. */
export interface CommonOptions {
  readonly json?: boolean;
  readonly units?: string;
  readonly quiet?: boolean;
  /** False for --no-color. */
  readonly color?: boolean;
  readonly output?: string;
  readonly strict?: boolean;
  readonly map?: readonly string[];
  readonly region?: string;
}

/** What a command is run with. */
export interface Context<Options extends CommonOptions> {
  readonly io: Io;
  readonly options: Options;
  /** Words that are no option, as typed. */
  readonly words: readonly string[];
  readonly files: readonly ScanArgument[];
}

/** Should text carry marks? Only on a terminal that wants them. */
export function wantsMarks({ options, io }: Context<CommonOptions>): boolean {
  const toTerminal = io.out.isTTY === true && options.output === undefined;
  return options.color !== false && !io.env["NO_COLOR"] && io.env["TERM"] !== "dumb" && toTerminal;
}

/** Metres unless `--units ft` or a region that plans in feet. */
export function unitOf({ units, region }: CommonOptions): LengthUnit {
  if (units === undefined) return region?.toUpperCase() === "US" ? "ft" : "m";
  if (units === "m" || units === "ft") return units;
  throw badOption("--units", "m or ft", units, "m");
}

/** How text is drawn for this reader. */
export async function textStyle(context: Context<CommonOptions>): Promise<TextStyle> {
  const { io, options } = context;
  const units = unitOf(options);
  const onTerminal = io.out.isTTY === true && options.output === undefined;
  const columnCount = onTerminal ? Math.max(80, Math.min(120, io.out.columns ?? 80)) : 80;
  if (!wantsMarks(context)) return { pen: plainPen, units, columnCount };
  const { Chalk } = await import("chalk");
  const chalk = new Chalk({ level: 1 });
  return {
    pen: { strong: (text) => chalk.bold(text), faint: (text) => chalk.dim(text) },
    units,
    columnCount,
  };
}

/** Writes the result; text also tells the issues on standard error, unless quiet. */
export async function finish(
  context: Context<CommonOptions>,
  result: {
    readonly json: () => object;
    readonly text: (style: TextStyle) => string;
    readonly issues: readonly Issue[];
  },
): Promise<void> {
  const { io, options } = context;
  if (options.json === true) return deliver(jsonText(result.json()), options.output, io);
  await deliver(result.text(await textStyle(context)), options.output, io);
  await tellIssues(context, result.issues);
}

/** Errors always, warnings and notes unless quiet, on standard error. */
export async function tellIssues(
  { io, options }: Context<CommonOptions>,
  issues: readonly Issue[],
): Promise<void> {
  const told = issues.filter(({ severity }) => severity === "error" || options.quiet !== true);
  if (told.length === 0) return;
  const lines = issueLines(told).map((line) => (io.err.isTTY === true ? folded(line) : line));
  await write(io.err, `${lines.join("\n")}\n`);
}

/** A long line in 80 columns, all but its first set in. */
function folded(line: string): string {
  return new Help().boxWrap(line, 78).replaceAll("\n", "\n  ");
}
