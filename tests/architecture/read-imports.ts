import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const srcFolder = fileURLToPath(new URL('../../src', import.meta.url));

/** One import, export-from, `import()` or `import('…')` type in a source file. */
export interface Import {
  readonly specifier: string;
  /** Erased when compiled. */
  readonly typeOnly: boolean;
  readonly line: number;
}

/** Every TypeScript file below src/, as a path from there with forward slashes, sorted. */
export function sourceFiles(): readonly string[] {
  return readdirSync(srcFolder, { recursive: true, encoding: 'utf8' })
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => path.endsWith('.ts'))
    .sort();
}

/** What one file imports. Reads the syntax alone, so that a file with type errors is judged too. */
export function importsOf(file: string): readonly Import[] {
  return importsIn(readFileSync(join(srcFolder, file), 'utf8'), file);
}

/** What a text imports; apart from the file system, so that the reader itself can be tested. */
export function importsIn(text: string, name: string): readonly Import[] {
  const source = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);
  const found: Import[] = [];
  const add = (node: ts.Node, specifier: ts.Node | undefined, typeOnly: boolean): void => {
    if (specifier === undefined || !ts.isStringLiteral(specifier)) return;
    found.push({ specifier: specifier.text, typeOnly, line: source.getLineAndCharacterOfPosition(node.getStart()).line + 1 });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) add(node, node.moduleSpecifier, node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword);
    else if (ts.isExportDeclaration(node)) add(node, node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) add(node, node.arguments[0], false);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node, node.argument.literal, true);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** The folder below src/ that a file lives in; for a file directly in src/, its own name. */
export function houseOf(file: string): string {
  const [first = ''] = file.split('/');
  return first.replace(/\.ts$/, '');
}

/** The file that a relative specifier means, as a path from src/. */
export function resolveImport(from: string, specifier: string): string {
  return posix.normalize(posix.join(dirname(from), specifier)).replace(/\.js$/, '.ts');
}
