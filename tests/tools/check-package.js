// Packs the package as it would be published, judges it, installs it into an empty folder without a
// network, and uses it there as its users would.
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { buildProject } from "./build.js";
import {
  pack,
  packageDoors,
  PROJECT,
  run,
  useCommand,
  writeCodeConsumers,
  writeTypedConsumer,
} from "./consumer.js";

const MAY_SHIP =
  /^(?:dist\/.+\.(?:js|d\.ts|json)|dist\/cli\/(?:NOTICES\.txt|(?:whole|page)\.cjs)|bin\/(?:stillband\.js|package\.json)|README\.md|LICENSE|package\.json)$/;
const MUST_SHIP = [
  "README.md",
  "LICENSE",
  "package.json",
  "bin/stillband.js",
  "bin/package.json",
  "dist/index.js",
  "dist/index.d.ts",
  "dist/cli/index.js",
  "dist/cli/page.cjs",
  "dist/cli/whole.cjs",
  "dist/venue.schema.json",
];

/** A tool of this project's own, run by Node itself, so that no shell or PATH is asked. */
async function tool(name, args, cwd, expectedCode) {
  const folder = join(PROJECT, "node_modules", name);
  const { bin } = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
  const file = typeof bin === "string" ? bin : (bin[name.split("/").pop()] ?? Object.values(bin)[0]);
  return run(process.execPath, [join(folder, file), ...args], cwd, expectedCode);
}

function checkContents(names) {
  const strangers = names.filter((name) => !MAY_SHIP.test(name));
  const missing = MUST_SHIP.filter((name) => !names.includes(name));
  if (strangers.length > 0) throw new Error(`ships what it should not: ${strangers.join(", ")}`);
  if (missing.length > 0) throw new Error(`does not ship: ${missing.join(", ")}`);
  return `${names.length} files`;
}

/** Unpacks the tarball and lays its dependencies, and theirs, beside it. */
async function install(tarball, folder) {
  const modules = join(folder, "node_modules");
  await mkdir(join(modules, "stillband"), { recursive: true });
  await run("tar", ["-xzf", tarball, "--strip-components=1", "-C", join(modules, "stillband")], folder);
  await writeFile(join(folder, "package.json"), '{ "name": "consumer", "private": true }\n');
  const laid = new Set();
  const lay = async (name) => {
    if (laid.has(name)) return;
    laid.add(name);
    const target = join(modules, name);
    await mkdir(dirname(target), { recursive: true });
    await cp(join(PROJECT, "node_modules", name), target, { recursive: true });
    for (const next of await dependenciesOf(target)) await lay(next);
  };
  for (const name of await dependenciesOf(join(modules, "stillband"))) await lay(name);
  return `with ${[...laid].sort().join(", ")}`;
}

async function dependenciesOf(folder) {
  const { dependencies = {} } = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
  return Object.keys(dependencies);
}

async function useCode(folder) {
  const { doors } = await packageDoors();
  const { module, required } = await writeCodeConsumers(folder);
  await run(process.execPath, [module], folder);
  await run(process.execPath, [required], folder);
  return `${doors.length} doors imported and required`;
}

async function useTyped(folder) {
  for (const file of await writeTypedConsumer(folder)) await tool("typescript", ["-p", file], folder);
  return "nodenext and bundler";
}

async function checkAll(folder) {
  let packed;
  const steps = [
    ["build", () => buildProject(PROJECT)],
    ["publint --strict", () => tool("publint", ["run", PROJECT, "--strict", "--pack", "npm"], PROJECT)],
    [
      "attw --profile esm-only",
      () => tool("@arethetypeswrong/cli", ["--pack", ".", "--profile", "esm-only"], PROJECT),
    ],
    ["contents", async () => checkContents((packed = await pack(folder)).names)],
    ["install", () => install(packed.tarball, folder)],
    ["import and require", () => useCode(folder)],
    ["TypeScript consumer", () => useTyped(folder)],
    ["command", () => useCommand(process.execPath, folder)],
  ];
  for (const [name, step] of steps) {
    const said = await step().catch((error) => {
      throw new Error(`${name}: ${error.message}`);
    });
    const short = typeof said === "string" && said.length < 100 && !said.includes("\n") ? `: ${said}` : "";
    console.log(`ok  ${name}${short}`);
  }
}

const folder = await mkdtemp(join(tmpdir(), "stillband-package-"));
try {
  await checkAll(folder);
} catch (error) {
  console.error(`not ok  ${error.message}`);
  process.exitCode = 1;
} finally {
  await rm(folder, { recursive: true, force: true });
}
