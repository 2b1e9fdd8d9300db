import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

/** One thing that a file imports. */
export interface Import {
  /** A path below the project folder (as written, without extension), or a package's specifier. */
  target: string;
  isPackage: boolean;
  /** Erased before anything runs. */
  typeOnly: boolean;
}

/** A source file of the project. */
export interface SourceFile {
  /** Below the project folder, with forward slashes. */
  path: string;
  text: string;
  imports: Import[];
  /** Names used as values: `Date`, and for property access `Math.random`, `process.env`. Comments and strings do not count. */
  uses: Set<string>;
}

const project = fileURLToPath(new URL('../..', import.meta.url));
const notOurs = new Set(['node_modules', '.next', '.git', 'data', 'generated', 'output']);

/** Paths of all files of the project that it did not generate, below the project folder. */
export function listFiles(folder = ''): string[] {
  return readdirSync(join(project, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = posix.join(folder, entry.name);
    if (notOurs.has(entry.name)) return [];
    return entry.isDirectory() ? listFiles(path) : [path];
  });
}

/** Every TypeScript and JavaScript file of the project, parsed. */
export function readSources(): SourceFile[] {
  return listFiles()
    .filter((path) => /\.(ts|tsx|mts|mjs)$/.test(path) && !path.endsWith('.d.ts'))
    .map((path) => parseSource(path, readFileSync(join(project, path), 'utf8')));
}

/** Parses one file: what it imports, statically or not, and which names it uses. */
export function parseSource(path: string, text: string): SourceFile {
  const kind = /\.(tsx|mjs)$/.test(path) ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const tree = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, kind);
  const imports: Import[] = [];
  const uses = new Set<string>();
  const visit = (node: ts.Node): void => {
    const found = importIn(node);
    if (found) imports.push({ ...locate(path, found.specifier), typeOnly: found.typeOnly });
    const used = nameUsed(node);
    if (used !== null) uses.add(used);
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return { path, text, imports, uses };
}

function locate(from: string, specifier: string): Omit<Import, 'typeOnly'> {
  if (!specifier.startsWith('.')) return { target: specifier, isPackage: true };
  return { target: posix.join(dirname(from), specifier), isPackage: false };
}

function importIn(node: ts.Node): { specifier: string; typeOnly: boolean } | null {
  if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
    return { specifier: node.moduleSpecifier.text, typeOnly: onlyTypes(node) };
  }
  if (ts.isExportDeclaration(node) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) {
    return { specifier: node.moduleSpecifier.text, typeOnly: node.isTypeOnly };
  }
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal)) {
    return { specifier: node.argument.literal.text, typeOnly: true };
  }
  if (ts.isCallExpression(node) && isLoad(node.expression)) {
    const [argument] = node.arguments;
    if (argument && ts.isStringLiteralLike(argument)) return { specifier: argument.text, typeOnly: false };
  }
  return null;
}

function isLoad(callee: ts.Expression): boolean {
  return callee.kind === ts.SyntaxKind.ImportKeyword || (ts.isIdentifier(callee) && callee.text === 'require');
}

function onlyTypes({ importClause }: ts.ImportDeclaration): boolean {
  if (!importClause) return false;
  if (importClause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const names = importClause.namedBindings;
  if (importClause.name || !names || !ts.isNamedImports(names)) return false;
  return names.elements.length > 0 && names.elements.every((element) => element.isTypeOnly);
}

function nameUsed(node: ts.Node): string | null {
  if (ts.isPropertyAccessExpression(node) && ts.isIdentifier(node.expression)) return `${node.expression.text}.${node.name.text}`;
  if (!ts.isIdentifier(node)) return null;
  const isName = ts.isPropertyAccessExpression(node.parent) && node.parent.name === node;
  const isKey = ts.isPropertyAssignment(node.parent) && node.parent.name === node;
  return isName || isKey ? null : node.text;
}
