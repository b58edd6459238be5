import { build } from "esbuild";
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { basename, dirname, join, relative } from "node:path";
import { pathToFileURL } from "node:url";

const INSTRUMENTER = "@stryker-mutator/instrumenter";
const VERSION = "9.6.1";
/** Properties are tried so many times for each mutant at most. */
const MOST_RUNS = 10;

/** Words that people read are compared by golden files and by the tests of the texts, not by mutants. */
const EXCLUDED = ["StringLiteral"];

/** Puts every mutant of the files into their code, to be switched on by number. */
export async function instrumented(files, folder) {
  const home = join(folder, "instrumenter");
  const entry = join(home, "node_modules", INSTRUMENTER, "dist/src/index.js");
  if (!existsSync(entry)) {
    mkdirSync(home, { recursive: true });
    writeFileSync(join(home, "package.json"), '{ "private": true }\n');
    const words = ["install", "--no-audit", "--no-fund", `${INSTRUMENTER}@${VERSION}`];
    const { status } = spawnSync("npm", words, { cwd: home, stdio: "inherit" });
    if (status !== 0) throw new Error(`npm could not install ${INSTRUMENTER}@${VERSION}`);
  }
  const { Instrumenter } = await import(pathToFileURL(entry).href);
  const silent = () => undefined;
  const logger = { isDebugEnabled: () => false, debug: silent, info: silent, warn: console.warn };
  const options = { plugins: null, excludedMutations: EXCLUDED, ignorers: [], noHeader: false };
  const input = files.map((name) => ({ name, mutate: true, content: readFileSync(name, "utf8") }));
  const { files: output, mutants } = await new Instrumenter(logger).instrument(input, options);
  return { mutants, code: new Map(output.map(({ name, content }) => [name, content])) };
}

/** Bundles each test file that stands on any of the instrumented sources, with them. */
export async function bundled(tests, code, project, folder) {
  const plugin = {
    name: "instrumented",
    setup(bundler) {
      bundler.onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) =>
        code.has(path) ? { contents: code.get(path), loader: "ts" } : undefined,
      );
      bundler.onLoad({ filter: /[\\/]tests[\\/].*\.ts$/ }, ({ path }) => ({
        contents: readFileSync(path, "utf8")
          .replace(/numRuns: ([\d_]+)/g, (_, count) => `numRuns: ${fewer(count)}`)
          .replaceAll("import.meta.url", JSON.stringify(pathToFileURL(path).href)),
        loader: "ts",
      }));
    },
  };
  const home = mkdtempSync(join(folder, "bundles-"));
  const made = await Promise.all(
    tests.map(async (test) => {
      const outfile = join(home, `${basename(dirname(test))}-${basename(test)}.cjs`);
      const { metafile } = await build({
        absWorkingDir: project,
        entryPoints: [relative(project, test)],
        outfile,
        bundle: true,
        external: ["vitest", "fast-check"],
        format: "cjs",
        platform: "node",
        target: "node20",
        plugins: [plugin],
        metafile: true,
        logLevel: "error",
      });
      return {
        outfile,
        concerned: Object.keys(metafile.inputs).some((path) => code.has(join(project, path))),
      };
    }),
  );
  return { home, bundles: made.filter(({ concerned }) => concerned).map(({ outfile }) => outfile) };
}

const fewer = (count) => Math.min(MOST_RUNS, Number(count.replaceAll("_", "")));
