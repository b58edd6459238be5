// Packs the package, installs it with npm into a folder outside, and uses it there under every Node that it
// supports: as an ES module, by require and as the command. Then compiles a strict user's file against its
// declarations with the lowest TypeScript that it supports, and shows that the one before is too old.
// Other Nodes and compilers are the registry's own packages of them, pinned here.
// Usage: node tests/tools/check-nodes.js
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildProject } from "./build.js";
import { pack, PROJECT, run, useCommand, writeCodeConsumers, writeTypedConsumer } from "./consumer.js";

/** The lowest supported, as package.json says, and the two lines after it. */
const NODES = ["20.19.0", "22.12.0", "24.11.1"];
/** The lowest that README names, and one between it and this project's own. */
const TYPESCRIPTS = ["5.0.4", "5.4.5"];

/** Node as a package of the registry: it carries the binary for one system and architecture. */
function nodePackage(version) {
  const system = process.platform === "win32" ? "win" : process.platform;
  return `node-${version}@npm:node-${system}-${process.arch}@${version}`;
}

async function install(folder) {
  const { tarball } = await pack(folder);
  await writeFile(join(folder, "package.json"), '{ "name": "consumer", "private": true }\n');
  const compilers = TYPESCRIPTS.map((version) => `typescript-${version}@npm:typescript@${version}`);
  const quiet = ["--no-audit", "--no-fund", "--ignore-scripts", "--loglevel=error"];
  await run("npm", ["install", ...quiet, tarball, ...NODES.map(nodePackage), ...compilers], folder);
  return `${NODES.length} Nodes, ${TYPESCRIPTS.length} compilers`;
}

async function useUnder(version, folder) {
  const program = process.platform === "win32" ? "bin/node.exe" : "bin/node";
  const node = join(folder, "node_modules", `node-${version}`, program);
  const told = (await run(node, ["--version"], folder)).trim();
  if (told !== `v${version}`) throw new Error(`asked for Node ${version}, got ${told}`);
  const { module, required } = await writeCodeConsumers(folder);
  await run(node, [module], folder);
  await run(node, [required], folder);
  return await useCommand(node, folder);
}

async function compileWith(version, folder) {
  const tsc = join(folder, "node_modules", `typescript-${version}`, "bin/tsc");
  for (const file of await writeTypedConsumer(folder)) await run(process.execPath, [tsc, "-p", file], folder);
  return "nodenext and bundler";
}

const folder = await mkdtemp(join(tmpdir(), "stillband-nodes-"));
const steps = [
  ["build", () => buildProject(PROJECT)],
  ["install", () => install(folder)],
  ...NODES.map((version) => [`Node ${version}`, () => useUnder(version, folder)]),
  ...TYPESCRIPTS.map((version) => [`TypeScript ${version}`, () => compileWith(version, folder)]),
];
try {
  for (const [name, step] of steps) {
    const said = await step().catch((error) => {
      throw new Error(`${name}: ${error.message}`);
    });
    console.log(`ok  ${name}${said === undefined ? "" : `: ${said}`}`);
  }
} catch (error) {
  console.error(`not ok  ${error.message}`);
  process.exitCode = 1;
} finally {
  await rm(folder, { recursive: true, force: true });
}
