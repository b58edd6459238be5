import { readReadings } from "../commissioning/index.js";
import type { ReadingsImport, ReadReadingsOptions } from "../commissioning/index.js";
import { formatIssue } from "../issues/index.js";
import type { Issue } from "../issues/index.js";
import { plainTable } from "../scan/index.js";
import { CliError, EXIT } from "./exit.js";
import { inputText, STDIN_NAME } from "./input.js";
import type { Io } from "./io.js";

/**
 * Reads a table of readings: a walk test, or the receivers after install.
 * @param example what a usable file is, for the next step
 * @throws {CliError} exit 65 where it holds no reading, 66 where it can't be had
 */
export async function readingsFile(
  path: string,
  options: Omit<ReadReadingsOptions, "source" | "decimalComma">,
  io: Io,
  example: string,
): Promise<ReadingsImport> {
  const source = path === "-" ? STDIN_NAME : path;
  const { rows, delimiter, faults } = plainTable((await inputText(path, io)).replace(/^\ufeff/, ""));
  const cut = faults.map(({ line }): Issue => {
    const expected = "cells whose quotes are closed";
    return { code: "bad-cell", severity: "error", source, line, expected, action: "row skipped" };
  });
  const read = readReadings(rows, { ...options, source, decimalComma: delimiter !== "," });
  const readings = {
    ...read,
    rowCount: read.rowCount + cut.length,
    rejectedCount: read.rejectedCount + cut.length,
    issues: [...cut, ...read.issues],
  };
  if (readings.readings.length > 0) return readings;
  const errors = readings.issues.filter(({ severity }) => severity === "error");
  throw new CliError(EXIT.badData, errors.map(formatIssue).join("\n"), example, readings.issues);
}
