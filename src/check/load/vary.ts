/**
 * Works a variant's changes into its base.
 *
 * `change task` puts its clauses in the place of the base's clauses of the same kinds; `remove task` takes the task out; any other
 * declaration is added, and `at rest` and `at work` take the place of the base's.
 */
import { nearNames } from '../../base/near-name.js';
import type { ChangeNode, HeaderNode, NameNode, RemoveNode, TaskNode } from '../../syntax/tree.js';
import type { PlacedDeclaration } from '../model.js';
import { diagnostic, rewrite } from '../report.js';
import type { Shelf } from './shelf.js';

/** The base with the variant's declarations worked in; base first. Changes stay in the list, for an editor to find. */
export function vary(
  shelf: Shelf,
  base: readonly PlacedDeclaration[],
  own: readonly PlacedDeclaration[],
  role: HeaderNode['role'],
): readonly PlacedDeclaration[] {
  let result = base.filter(
    ({ node }) => node.kind !== 'rest' || !own.some((mine) => mine.node.kind === 'rest' && mine.node.which === node.which),
  );
  for (const declaration of own) {
    const { node } = declaration;
    if (node.kind !== 'change' && node.kind !== 'remove') result.push(declaration);
    else if (role !== 'variant') outsideVariant(shelf, node);
    else if (!result.some((other) => isTask(other, node.name))) missingTask(shelf, node, result);
    else if (node.kind === 'remove') result = result.filter((other) => !isTask(other, node.name));
    else result = [...result.map((other) => changed(other, node)), declaration];
  }
  return result;
}

function isTask({ node }: PlacedDeclaration, name: NameNode): boolean {
  return node.kind === 'task' && node.name.text === name.text;
}

function changed(declaration: PlacedDeclaration, change: ChangeNode): PlacedDeclaration {
  const { node, home } = declaration;
  if (node.kind !== 'task' || node.name.text !== change.name.text) return declaration;
  const kinds = new Set(change.clauses.map(({ kind }) => kind));
  const clauses = [...node.clauses.filter(({ kind }) => !kinds.has(kind)), ...change.clauses];
  const task: TaskNode = { ...node, title: change.title ?? node.title, clauses };
  return { node: task, home };
}

function outsideVariant(shelf: Shelf, node: ChangeNode | RemoveNode): void {
  const message = `\`${node.kind} task ${node.name.text}\` can only stand in a variant.`;
  const help = 'Begin the file with `variant` and name its base with `varies`, or edit the task itself.';
  shelf.diagnostics.push(diagnostic('changeOutsideVariant', { at: node.name.at, message, help }));
}

function missingTask(shelf: Shelf, { kind, name }: ChangeNode | RemoveNode, present: readonly PlacedDeclaration[]): void {
  const tasks = present.flatMap(({ node }) => (node.kind === 'task' ? [node.name.text] : []));
  const near = nearNames(name.text, tasks)[0];
  const message = `The base has no task \`${name.text}\` to ${kind}.`;
  const fixes = near === undefined ? [] : [rewrite('likely', name.at, near)];
  shelf.diagnostics.push(
    diagnostic('changeOfMissingTask', {
      at: name.at,
      message,
      ...(near === undefined ? {} : { help: `Did you mean \`${near}\`?` }),
      fixes,
    }),
  );
}
