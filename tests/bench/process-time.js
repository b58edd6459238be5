import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { median } from "./statistics.js";

export const PROJECT = join(import.meta.dirname, "../..");
/** What every Node program pays before it does anything. */
export const BARE_NODE = ["-e", "0"];

/** A run that takes longer is ended and fails. */
const LONGEST_MS = 60_000;

/** @returns a whole run of Node in the project folder: its time in ms and what it printed */
export function runNode(args) {
  const startedMs = performance.now();
  const { status, error, stdout, stderr } = spawnSync(process.execPath, args, {
    cwd: PROJECT,
    encoding: "utf8",
    timeout: LONGEST_MS,
  });
  const ms = performance.now() - startedMs;
  if (status !== 0)
    throw new Error(`node ${args.join(" ")}: ${error?.message ?? `exit code ${status}`}\n${stderr}`);
  return { ms, stdout };
}

/**
 * Runs some commands in turn, so that whatever else the machine does falls on all of them alike.
 * @param commands arguments of Node, each once a round
 * @returns for each command the least and the median time, ms; a first round warms the disk and isn't counted
 */
export function interleaved(commands, roundCount) {
  const times = commands.map(() => []);
  for (let round = 0; round <= roundCount; round++)
    for (const [index, args] of commands.entries()) {
      const { ms } = runNode(args);
      if (round > 0) times[index].push(ms);
    }
  return times.map((ms) => ({ minMs: Math.min(...ms), medianMs: median(ms) }));
}

export function inMs({ minMs, medianMs }) {
  return `${medianMs.toFixed(1)} ms (min ${minMs.toFixed(1)})`;
}
