import { printable } from "../issues/index.js";
import { CliError, EXIT } from "./exit.js";

/**
 * Plain data from a text of YAML, JSON being a part of it; what a terminal obeys in its words is made
 * visible. The parser is loaded only here.
 * @param source file name for messages
 * @throws {CliError} exit 65 where it is neither
 */
export async function readYaml(text: string, source: string): Promise<unknown> {
  const { parse } = await import("yaml");
  try {
    return parse(text, harmless, { maxAliasCount: 20, logLevel: "error" }) as unknown;
  } catch (error) {
    const [why = ""] = (error instanceof Error ? error.message : String(error)).split("\n");
    throw new CliError(
      EXIT.badData,
      `${printable(source, 200)}: not YAML or JSON: ${printable(why.replace(/:$/, ""), 200)}`,
      "stillband profiles raster-13 --json shows the form",
      [
        {
          code: "unreadable",
          severity: "error",
          source,
          value: why,
          expected: "YAML or JSON",
          action: "stopped",
        },
      ],
    );
  }
}

function harmless(_key: unknown, value: unknown): unknown {
  return typeof value === "string" ? printable(value, Infinity) : value;
}
