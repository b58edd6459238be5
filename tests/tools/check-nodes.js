// Packs the package, installs it with npm into a folder outside, and uses it there under every Node that it
// supports, as an ES module, by require and as the command; then compiles a strict user's file against its
// declarations with the lowest TypeScript that it supports and with later ones. The other Nodes are the
// registry's own packages of Node's binaries, pinned below.
// Usage: node tests/tools/check-nodes.js
import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { buildProject } from "./build.js";

const PROJECT = join(import.meta.dirname, "../..");
const NODES = ["20.19.0", "22.12.0", "24.11.1"];
/** The lowest that compiles the declarations, one between, and the one of this project. */
const TYPESCRIPTS = ["5.0.4", "5.4.5"];

const start = promisify(execFile);

async function run(command, args, cwd) {
  try {
    return (await start(command, args, { cwd, maxBuffer: 2 ** 26 })).stdout;
  } catch (error) {
    throw new Error(`${command} ${args.join(" ")}: ${error.stdout ?? ""}${error.stderr ?? error.message}`);
  }
}
