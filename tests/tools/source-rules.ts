/** What the sources themselves are held to, read with the TypeScript API. */
import ts from "typescript";
import type { Import } from "./import-rules.js";

/** @returns every import, re-export and `import()` of a file, paths relative to src */
export function importsOf(file: string, source: ts.SourceFile): Import[] {
  const found: Import[] = [];
  const add = (specifier: ts.Node | undefined, typeOnly: boolean): void => {
    if (specifier === undefined || !ts.isStringLiteralLike(specifier)) return;
    const relative = specifier.text.startsWith(".");
    const target = relative ? resolved(file, specifier.text) : specifier.text;
    found.push({ file, target, relative, typeOnly });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, onlyTypes(node.importClause));
    if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, onlyTypes(node));
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node.argument.literal, true);
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0], false);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function onlyTypes(clause: ts.ImportClause | ts.ExportDeclaration | undefined): boolean {
  if (clause === undefined) return false;
  if (clause.isTypeOnly) return true;
  if (ts.isImportClause(clause) && clause.name !== undefined) return false;
  const names = ts.isImportClause(clause) ? clause.namedBindings : clause.exportClause;
  if (names === undefined || !(ts.isNamedImports(names) || ts.isNamedExports(names))) return false;
  return names.elements.length > 0 && names.elements.every((element) => element.isTypeOnly);
}

function resolved(file: string, specifier: string): string {
  const parts = file.split("/").slice(0, -1);
  for (const step of specifier.split("/"))
    if (step === ".." && parts.length > 0 && parts.at(-1) !== "..") parts.pop();
    else if (step !== ".") parts.push(step);
  return parts.join("/");
}

/** @returns what an index.ts holds beside named re-exports */
export function doorFaults(file: string, source: ts.SourceFile): string[] {
  return source.statements.flatMap((statement) => {
    const named =
      ts.isExportDeclaration(statement) &&
      statement.moduleSpecifier !== undefined &&
      statement.exportClause !== undefined &&
      ts.isNamedExports(statement.exportClause);
    return named ? [] : [`${file}:${lineOf(source, statement)}: a door only re-exports names`];
  });
}

/** @returns each function longer than `mostLines`, from its own first line to its last */
export function longFunctions(file: string, source: ts.SourceFile, mostLines: number): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node) && "body" in node && node.body !== undefined) {
      const lines = source.getLineAndCharacterOfPosition(node.getEnd()).line + 2 - lineOf(source, node);
      if (lines > mostLines) found.push(`${file}:${lineOf(source, node)}: a function of ${lines} lines`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** @returns the lines of a file, a last line break not counted as one more */
export function lineCount(text: string): number {
  return text.replace(/\n$/, "").split("\n").length;
}

function lineOf(source: ts.SourceFile, node: ts.Node): number {
  return source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
}
