import { build } from "esbuild";
import type { BuildOptions } from "esbuild";
import { Linter } from "eslint";
import { PROJECT } from "./core-program.js";

/**
 * Bundles a module of a few lines for browsers, as an embedder's bundler would.
 * @param code imports from `stillband/…` (what is built) or from `./src/…`
 * @param more for scripts of a page rather than modules
 * @returns the code, minified
 */
export async function browserBundle(code: string, more: BuildOptions = {}): Promise<string> {
  const { outputFiles } = await build({
    absWorkingDir: PROJECT,
    stdin: { contents: code, resolveDir: PROJECT },
    bundle: true,
    minify: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    legalComments: "none",
    logLevel: "silent",
    ...more,
    write: false,
  });
  return outputFiles[0]!.text;
}

/**
 * @returns the names that a module takes from its platform, `typeof` included, and that the language (ES2022) does
 * not have, sorted
 * @throws {Error} when it is no module
 */
export function freeNames(code: string): string[] {
  const found = new Linter().verify(code, [
    {
      languageOptions: { ecmaVersion: 2022, sourceType: "module" },
      linterOptions: { noInlineConfig: true },
      rules: { "no-undef": ["error", { typeof: true }] },
    },
  ]);
  const names = found.map(({ ruleId, message }) => {
    const name = ruleId === "no-undef" ? /^'(.+)' is not defined/.exec(message)?.[1] : undefined;
    if (name === undefined) throw new Error(message);
    return name;
  });
  return [...new Set(names)].sort();
}
