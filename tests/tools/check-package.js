// Packs the package as it would be published, judges it, installs it into an empty folder without a
// network, and uses it there as its users would.
import { execFile } from "node:child_process";
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { promisify } from "node:util";
import { buildProject } from "./build.js";

const PROJECT = join(import.meta.dirname, "../..");
const MAY_SHIP =
  /^(?:dist\/.+\.(?:js|d\.ts|json)|dist\/cli\/(?:NOTICES\.txt|whole\.cjs)|bin\/(?:stillband\.js|package\.json)|README\.md|LICENSE|package\.json)$/;
const MUST_SHIP = [
  "README.md",
  "LICENSE",
  "package.json",
  "bin/stillband.js",
  "bin/package.json",
  "dist/index.js",
  "dist/index.d.ts",
  "dist/cli/index.js",
  "dist/cli/whole.cjs",
  "dist/venue.schema.json",
];

const start = promisify(execFile);

/** @returns standard output; throws with all that was printed when the exit code isn't `expectedCode` */
async function run(command, args, cwd, expectedCode = 0) {
  const {
    code = 0,
    stdout,
    stderr,
  } = await start(command, args, { cwd, maxBuffer: 2 ** 26 }).catch((error) => error);
  if (code !== expectedCode)
    throw new Error(`${command} ${args.join(" ")}: exit code ${code}\n${stdout ?? ""}${stderr ?? ""}`);
  return stdout;
}

/** A tool of this project's own, run by Node itself, so that no shell or PATH is asked. */
async function tool(name, args, cwd, expectedCode) {
  const folder = join(PROJECT, "node_modules", name);
  const { bin } = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
  const file = typeof bin === "string" ? bin : (bin[name.split("/").pop()] ?? Object.values(bin)[0]);
  return run(process.execPath, [join(folder, file), ...args], cwd, expectedCode);
}

async function pack(folder) {
  const [{ filename, files }] = JSON.parse(
    await run("npm", ["pack", "--json", "--ignore-scripts", "--pack-destination", folder], PROJECT),
  );
  return { tarball: join(folder, filename), names: files.map(({ path }) => path) };
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

const LOSS = "stillband.freeSpacePathLossDb(1, 2450)";
// ITU-R P.525: 20·log10(4π·1 m·2450 MHz / c) = 40.23 dB, by hand.
const LOSS_HOLDS = `if (Math.abs(${LOSS} - 40.23) > 0.005) throw new Error("free-space loss at 1 m: " + ${LOSS});`;

async function useAsModule(folder, doors) {
  const imports = doors.map((door) => `await import(${JSON.stringify(door)});`).join("\n");
  await writeFile(
    join(folder, "consumer.mjs"),
    `import * as stillband from "stillband";\n${LOSS_HOLDS}\n${imports}\n`,
  );
  await run(process.execPath, ["consumer.mjs"], folder);
  return `${doors.length} doors imported`;
}

async function useByRequire(folder, doors) {
  const requires = doors.map((door) => `require(${JSON.stringify(door)});`).join("\n");
  await writeFile(
    join(folder, "consumer.cjs"),
    `const stillband = require("stillband");\n${LOSS_HOLDS}\n${requires}\n`,
  );
  await run(process.execPath, ["consumer.cjs"], folder);
  return `${doors.length} doors required`;
}

/** A strict TypeScript user without Node types, who checks declarations too. */
async function useTyped(folder, doors) {
  const imports = doors.map(
    (door, index) => `import * as door${index} from ${JSON.stringify(door)};\nvoid door${index};`,
  );
  const use = `import { freeSpacePathLossDb } from "stillband";\nexport const lossDb: number = freeSpacePathLossDb(1, 2450);\n`;
  const wrong = `// @ts-expect-error a distance is a number\nfreeSpacePathLossDb("1", 2450);\n`;
  await writeFile(join(folder, "consumer.mts"), `${imports.join("\n")}\n${use}${wrong}`);
  const strict = {
    noEmit: true,
    strict: true,
    skipLibCheck: false,
    types: [],
    lib: ["es2022"],
    target: "es2022",
  };
  for (const [module, moduleResolution] of [
    ["nodenext", "nodenext"],
    ["esnext", "bundler"],
  ]) {
    const compilerOptions = { ...strict, module, moduleResolution };
    await writeFile(
      join(folder, "tsconfig.json"),
      JSON.stringify({ compilerOptions, files: ["consumer.mts"] }),
    );
    await tool("typescript", ["-p", "."], folder);
  }
  return "nodenext and bundler";
}

async function useCommand(folder) {
  const bin = join("node_modules", "stillband", "bin", "stillband.js");
  const help = await run(process.execPath, [bin, "--help"], folder);
  if (!help.includes("channel")) throw new Error(`--help does not name the channel command:\n${help}`);
  const scans = join(PROJECT, "fixtures/scans");
  const scan = (await readdir(scans)).sort().find((name) => /-empty\.csv$/.test(name));
  if (scan === undefined) throw new Error("fixtures/scans holds no *-empty.csv to try the command on");
  const answer = JSON.parse(
    await run(process.execPath, [bin, "channel", "--json", join(scans, scan)], folder),
  );
  if (!Number.isInteger(answer.recommended?.channel))
    throw new Error(`channel --json recommends nothing on ${scan}`);
  await run(process.execPath, [bin, "channel", "absent.csv"], folder, 66);
  return `radio ch ${answer.recommended.channel} on ${scan}; exit code 66 on a missing file`;
}

async function checkAll(folder) {
  const { exports } = JSON.parse(await readFile(join(PROJECT, "package.json"), "utf8"));
  const doors = Object.keys(exports).map((door) => door.replace(/^\./, "stillband"));
  const code = doors.filter((door) => !door.endsWith(".json"));
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
    ["ES module consumer", () => useAsModule(folder, code)],
    ["require consumer", () => useByRequire(folder, doors)],
    ["TypeScript consumer", () => useTyped(folder, code)],
    ["command", () => useCommand(folder)],
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
