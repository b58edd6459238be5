import { dirname, join } from "node:path";
import type { Issue } from "../../issues/index.js";
import { printable } from "../../issues/index.js";
import { buildSurvey } from "../../scan/index.js";
import { venueSchema } from "../../venue/index.js";
import { tellIssues, unitOf } from "../context.js";
import type { CommonOptions, Context } from "../context.js";
import { alreadyThere, createFile } from "../create-file.js";
import type { ExitCode } from "../exit.js";
import { expandFiles } from "../expand-files.js";
import { inputExists, inputText } from "../input.js";
import { write } from "../io.js";
import { jsonText } from "../json-text.js";
import { mapOption } from "../map-option.js";
import { exitFor } from "../outcome.js";
import { readScans } from "../read-scans.js";
import { EMPTY_SKETCH, venueSketch } from "../venue-sketch.js";
import type { VenueSketch } from "../venue-sketch.js";
import { venueTemplate } from "../venue-template.js";
import { filledWord } from "../words.js";

/** The schema that lies beside a venue file, so that editors complete and check it. */
const SCHEMA_FILE = "venue.schema.json";

/** A venue file to start from, pre-filled from scans where some are given. Nothing is asked or overwritten. */
export async function runInit(context: Context<CommonOptions>): Promise<ExitCode> {
  const { options, io } = context;
  const path = filledWord("--output", options.output ?? "venue.yaml", "a file's name", "venue.yaml");
  const units = unitOf(options);
  if (path === "-") {
    const { sketch, issues } = await sketched(context, ".");
    await write(io.out, venueTemplate(sketch, units, null));
    await tellIssues(context, issues);
    return exitFor(context, issues);
  }
  if (await inputExists(path)) throw alreadyThere(path);
  const { sketch, issues: scanIssues } = await sketched(context, dirname(path));
  const text = venueTemplate(sketch, units, SCHEMA_FILE);
  await createFile(path, path.toLowerCase().endsWith(".json") ? await asJson(text) : text);
  const schemaPath = join(dirname(path), SCHEMA_FILE);
  const issues = [...scanIssues, ...(await writeSchema(context, schemaPath))];
  const files = [path, schemaPath];
  const json = { schema: "stillband/init@1", issues, files };
  await write(io.out, options.json === true ? jsonText(json) : wroteText(files, sketch));
  if (options.json !== true) await tellIssues(context, issues);
  return exitFor(context, issues);
}

async function sketched(
  context: Context<CommonOptions>,
  folder: string,
): Promise<{ readonly sketch: VenueSketch; readonly issues: readonly Issue[] }> {
  if (context.files.length === 0) return { sketch: EMPTY_SKETCH, issues: [] };
  const files = await expandFiles(context.files);
  const imports = await readScans({ ...context, files }, mapOption(context.options));
  const survey = buildSurvey(imports, {});
  return { sketch: venueSketch(survey, imports, files, folder), issues: survey.issues };
}

/** The template as JSON, which has no comments. */
async function asJson(text: string): Promise<string> {
  const { parse } = await import("yaml");
  return jsonText({ $schema: `./${SCHEMA_FILE}`, ...(parse(text) as object) });
}

/** Writes the schema; one that is there stays, and is told of where it differs. */
async function writeSchema({ io }: Context<CommonOptions>, path: string): Promise<Issue[]> {
  const text = jsonText(venueSchema);
  if (!(await inputExists(path))) {
    await createFile(path, text);
    return [];
  }
  if ((await inputText(path, io)) === text) return [];
  const expected = "this schema is of another version and was left as it is; remove it and run init again";
  return [{ code: "ignored", severity: "warning", source: path, expected, action: "stated" }];
}

function wroteText([venue = "", schema = ""]: readonly string[], { rooms, scans }: VenueSketch): string {
  const roomCount = rooms.length === 1 ? "1 room" : `${rooms.length} rooms`;
  const from = scans.length === 0 ? "" : `, ${roomCount} sketched from ${scans.length} scans`;
  const shown = printable(venue, 200);
  return [
    `Wrote ${shown}${from}, and ${printable(schema, 200)} for editors that complete by it.`,
    `Next: open ${shown}, draw the rooms, list the luminaires; then stillband rooms ${shown}`,
    "",
  ].join("\n");
}
