import ts from "typescript";

const FORMAT = ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.UseAliasDefinedOutsideCurrentScope;

const printer = ts.createPrinter({ removeComments: true });

/** What a public name is, on one line: the signature of a function, the type of a constant, a type's own text. */
export function declaredType(name: string, symbol: ts.Symbol, checker: ts.TypeChecker): string {
  const declaration = symbol.declarations![0]!;
  const type = checker.getTypeOfSymbol(symbol);
  if (ts.isFunctionDeclaration(declaration)) {
    const signatures = type.getCallSignatures().map((one) => signatureText(one, checker));
    return signatures.map((text) => `function ${name}${text}`).join("\n");
  }
  if (ts.isVariableDeclaration(declaration)) return `const ${name}: ${typeText(type, checker)}`;
  if (ts.isClassDeclaration(declaration)) return classText(name, symbol, checker);
  return onOneLine(printer.printNode(ts.EmitHint.Unspecified, declaration, declaration.getSourceFile()));
}

function signatureText(signature: ts.Signature, checker: ts.TypeChecker): string {
  return onOneLine(checker.signatureToString(signature, undefined, FORMAT));
}

function typeText(type: ts.Type, checker: ts.TypeChecker): string {
  return onOneLine(checker.typeToString(type, undefined, FORMAT));
}

/** How it is made, and its public members. */
function classText(name: string, symbol: ts.Symbol, checker: ts.TypeChecker): string {
  const made = checker.getTypeOfSymbol(symbol).getConstructSignatures();
  const own = checker.getDeclaredTypeOfSymbol(symbol).getProperties().filter(isOwnAndPublic);
  const members = own.map((member) => {
    const readonly = ts.getCombinedModifierFlags(member.declarations![0]!) & ts.ModifierFlags.Readonly;
    return `${readonly ? "readonly " : ""}${member.name}: ${typeText(checker.getTypeOfSymbol(member), checker)};`;
  });
  return `class ${name} { ${[...made.map((one) => `new ${signatureText(one, checker)};`), ...members].join(" ")} }`;
}

function isOwnAndPublic(member: ts.Symbol): boolean {
  const declaration = member.declarations?.[0];
  if (declaration === undefined || /node_modules/.test(declaration.getSourceFile().fileName)) return false;
  const hidden = ts.ModifierFlags.Private | ts.ModifierFlags.Protected;
  return (ts.getCombinedModifierFlags(declaration) & hidden) === 0;
}

/** Without the `export` before it and the line breaks in it. */
function onOneLine(text: string): string {
  return text.replace(/^export /, "").replace(/\s+/g, " ");
}
