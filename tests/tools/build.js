// Builds dist/: the library by tsc (one file a module, with declarations), the command by esbuild (one file).
// Usage: node tests/tools/build.js [PROJECT_FOLDER]
import { build } from "esbuild";
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { readFile, readdir, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const PROJECT = resolve(import.meta.dirname, "../..");

/** Every room but cli, under the strict core settings: a stray `process` fails the build. */
function compileLibrary(project) {
  const tsc = createRequire(import.meta.url).resolve("typescript/bin/tsc");
  const options = ["-p", "tests/tsconfig.core.json", "--noEmit", "false", "--noEmitOnError"];
  return new Promise((done, fail) => {
    const compiler = spawn(process.execPath, [tsc, ...options], { cwd: project, stdio: "inherit" });
    compiler.on("error", fail);
    compiler.on("exit", (code) =>
      code === 0 ? done() : fail(new Error(`the library does not compile (tsc exit code ${code})`)),
    );
  });
}

// The argument parser loads node:child_process for sub-commands that are programs of their own.
// This command has none, and the module costs 3–4 ms of every start.
const withoutChildProcess = {
  name: "without-child-process",
  setup(bundler) {
    bundler.onResolve({ filter: /^node:child_process$/ }, ({ importer }) =>
      /node_modules[\\/]commander[\\/]/.test(importer) ? { path: "none", namespace: "none" } : undefined,
    );
    bundler.onLoad({ filter: /./, namespace: "none" }, () => ({ contents: "module.exports = {};" }));
  },
};

/** The venue's commands are a file of their own, required from bin/ when one of them is named. */
const wholeApart = {
  name: "whole-apart",
  setup(bundler) {
    bundler.onResolve({ filter: /^\.\/whole\.js$/ }, () => ({
      path: "../dist/cli/whole.cjs",
      external: true,
    }));
  },
};

/** The plan's page and pictures, and the packages that draw them, are loaded when a plan is written. */
const pageApart = {
  name: "page-apart",
  setup(bundler) {
    bundler.onResolve({ filter: /\/page\/index\.js$/ }, () => ({ path: "./page.cjs", external: true }));
  },
};

/** @returns esbuild's accounts of what went into which file */
async function bundleCommand(project) {
  const { version } = JSON.parse(await readFile(join(project, "package.json"), "utf8"));
  const shared = {
    absWorkingDir: project,
    bundle: true,
    // yaml is large and seldom asked for: required from node_modules when a profile file is read. A script that
    // comes from a code cache can't `import()`, so what is imported on demand inside the bundle is required too.
    external: ["yaml"],
    supported: { "dynamic-import": false },
    format: "cjs",
    platform: "node",
    target: "node20.19",
    minify: true,
    legalComments: "none",
    metafile: true,
    define: { STILLBAND_VERSION: JSON.stringify(version) },
  };
  const plugins = [withoutChildProcess];
  const built = await Promise.all([
    build({
      ...shared,
      entryPoints: ["src/cli/index.ts"],
      outfile: "dist/cli/index.js",
      plugins: [...plugins, wholeApart],
      // One function expression: bin/stillband.js runs it as a script, which may have a code cache.
      banner: { js: "(function(exports,require,module){" },
      footer: { js: "})" },
    }),
    build({
      ...shared,
      entryPoints: ["src/cli/whole.ts"],
      outfile: "dist/cli/whole.cjs",
      plugins: [...plugins, pageApart],
    }),
    build({ ...shared, entryPoints: ["src/page/index.ts"], outfile: "dist/cli/page.cjs" }),
  ]);
  return built.map(({ metafile }) => metafile);
}

/** The licences of the packages whose code is inside the bundle travel with it. */
async function writeNotices(project, metafiles) {
  const packages = new Set(
    metafiles
      .flatMap(({ inputs }) => Object.keys(inputs))
      .flatMap((input) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input) ?? []),
  );
  const notices = await Promise.all([...packages].sort().map((folder) => notice(join(project, folder))));
  if (notices.length > 0) await writeFile(join(project, "dist/cli/NOTICES.txt"), notices.join("\n"));
}

async function notice(folder) {
  const { name, version } = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
  const file = (await readdir(folder)).find((entry) => /^licen[cs]e/i.test(entry));
  if (file === undefined) throw new Error(`${name} is bundled but carries no licence file`);
  return `${name} ${version}\n\n${await readFile(join(folder, file), "utf8")}`;
}

export async function buildProject(project) {
  await rm(join(project, "dist"), { recursive: true, force: true });
  if (!existsSync(join(project, "src/cli/index.ts"))) throw new Error("src/cli/index.ts is missing");
  const [metafiles] = await Promise.all([bundleCommand(project), compileLibrary(project)]);
  await writeNotices(project, metafiles);
  await writeVenueSchema(project);
  await writeCodeCache(project);
}

/** The venue file's schema, from the table that the reader reads by; named in what `init` writes. */
async function writeVenueSchema(project) {
  const { venueSchema } = await import(pathToFileURL(join(project, "dist/venue/index.js")).href);
  await writeFile(join(project, "dist/venue.schema.json"), `${JSON.stringify(venueSchema, null, 2)}\n`);
}

/** In a process of its own, so that the cache is of a start and nothing else. */
function writeCodeCache(project) {
  if (!existsSync(join(project, "fixtures/scans"))) return Promise.resolve();
  const words = [join(import.meta.dirname, "code-cache.js"), project];
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, words, { stdio: "inherit" });
    child.on("error", fail);
    child.on("exit", (code) => (code === 0 ? done() : fail(new Error("no code cache could be made"))));
  });
}

if (import.meta.url === pathToFileURL(process.argv[1]).href)
  await buildProject(resolve(process.argv[2] ?? PROJECT)).catch((error) => {
    console.error(`build: ${error.message}`);
    process.exitCode = 1;
  });
