// A process of its own: reads one sweep log and prints { ms, peakMb, passCount } as JSON.
// Usage: node tests/bench/sweep-survey-timed.js FILE own|csv-parse
import { createReadStream } from "node:fs";
import { parse } from "csv-parse";
import { readScan } from "stillband/scan";

const [path, reader] = process.argv.slice(2);
const bytes = () => createReadStream(path, { highWaterMark: 1 << 18 });

async function own() {
  const { sweep } = await readScan(bytes(), { source: "log" });
  return sweep.passCount;
}

async function rows() {
  let rowCount = 0;
  const rows = bytes().pipe(parse({ trim: true, relax_column_count: true }));
  rows.on("data", () => rowCount++);
  await new Promise((done, fail) => rows.on("end", done).on("error", fail));
  return rowCount;
}

const startedMs = performance.now();
const count = await (reader === "own" ? own() : rows());
const ms = performance.now() - startedMs;
console.log(JSON.stringify({ ms, peakMb: process.resourceUsage().maxRSS / 1024, count }));
