import { existsSync, readdirSync } from "node:fs";
import { join, relative, sep } from "node:path";
import ts from "typescript";

export const PROJECT = join(import.meta.dirname, "../..");
export const SRC = join(PROJECT, "src");

/** The compiler's view of every room but cli: no Node types, no DOM. `more` are files to plant beside them. */
export function coreProgram(more: Readonly<Record<string, string>> = {}): ts.Program {
  const path = join(PROJECT, "tests/tsconfig.core.json");
  const { config, error } = ts.readConfigFile(path, (name) => ts.sys.readFile(name)) as {
    config: unknown;
    error?: ts.Diagnostic;
  };
  if (error !== undefined) throw new Error(ts.flattenDiagnosticMessageText(error.messageText, "\n"));
  const { options, fileNames } = ts.parseJsonConfigFileContent(config, ts.sys, join(PROJECT, "tests"));
  const planted = new Map(Object.entries(more).map(([name, text]) => [join(SRC, name), text]));
  const host = ts.createCompilerHost(options, true);
  const read = host.getSourceFile.bind(host);
  host.getSourceFile = (name, languageVersion, ...rest) => {
    const text = planted.get(name);
    return text === undefined
      ? read(name, languageVersion, ...rest)
      : ts.createSourceFile(name, text, languageVersion, true);
  };
  return ts.createProgram([...fileNames, ...planted.keys()], options, host);
}

/** Every TypeScript file of src, relative to it, "/"-separated, in order of name. */
export function sourceFiles(): string[] {
  if (!existsSync(SRC)) return [];
  return readdirSync(SRC, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => relative(SRC, join(entry.parentPath, entry.name)).split(sep).join("/"))
    .sort();
}

/** One file parsed alone. */
export function parsed(file: string, text: string): ts.SourceFile {
  return ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
}
