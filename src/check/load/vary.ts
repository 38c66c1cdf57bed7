/**
 * Works a variant's changes into its base.
 *
 * `change task` puts its clauses in the place of the base's clauses of the same kinds; `remove task` takes the task out; any other
 * declaration is added, and `at rest` and `at work` take the place of the base's.
 */
import { addTo } from '../../base/gather.js';
import { nearName, patience } from '../../base/near-name.js';
import type { ChangeNode, HeaderNode, NameNode, RemoveNode, TaskNode } from '../../syntax/tree.js';
import type { PlacedDeclaration } from '../model.js';
import { diagnostic, rewrite } from '../report.js';
import { noMoreTold } from '../told.js';
import type { Shelf } from './shelf.js';

/** The base with the variant's declarations worked in; base first. Changes stay in the list, for an editor to find. */
export function vary(
  shelf: Shelf,
  base: readonly PlacedDeclaration[],
  own: readonly PlacedDeclaration[],
  role: HeaderNode['role'],
): readonly PlacedDeclaration[] {
  const replaced = new Set(own.map(({ node }) => (node.kind === 'rest' ? node.which : undefined)));
  const kept = base.filter(({ node }) => node.kind !== 'rest' || !replaced.has(node.which));
  const worked = new Worked(kept);
  const shared = patience();
  let told = 0;
  for (const declaration of own) {
    const { node } = declaration;
    if (node.kind !== 'change' && node.kind !== 'remove') worked.add(declaration);
    else if (role !== 'variant') outsideVariant(shelf, node);
    else if (!worked.has(node.name))
      told += missingTask(shelf, node, { told, near: () => nearName(node.name.text, worked.taskNames(), shared) });
    else if (node.kind === 'remove') worked.remove(node.name);
    else {
      worked.change(node);
      worked.add(declaration);
    }
  }
  return worked.declarations();
}

/** Declarations while a variant is worked in, with the places of tasks by name; a class because what is worked in is its own. */
class Worked {
  private readonly all: (PlacedDeclaration | undefined)[] = [];
  private readonly places = new Map<string, number[]>();

  constructor(base: readonly PlacedDeclaration[]) {
    for (const declaration of base) this.add(declaration);
  }

  add(declaration: PlacedDeclaration): void {
    const place = this.all.push(declaration) - 1;
    const { node } = declaration;
    if (node.kind === 'task') addTo(this.places, node.name.text, place);
  }

  has(name: NameNode): boolean {
    return this.places.has(name.text);
  }

  remove(name: NameNode): void {
    for (const place of this.places.get(name.text) ?? []) this.all[place] = undefined;
    this.places.delete(name.text);
  }

  change(change: ChangeNode): void {
    for (const place of this.places.get(change.name.text) ?? []) {
      const before = this.all[place];
      if (before !== undefined) this.all[place] = changed(before, change);
    }
  }

  taskNames(): Iterable<string> {
    return this.places.keys();
  }

  declarations(): readonly PlacedDeclaration[] {
    return this.all.flatMap((declaration) => declaration ?? []);
  }
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

/** How many mistakes that was: none past the limit. */
function missingTask(
  shelf: Shelf,
  { kind, name }: ChangeNode | RemoveNode,
  { told, near: find }: { readonly told: number; readonly near: () => string | undefined },
): number {
  const most = shelf.limits.mistakes;
  if (told >= most) return 0;
  const near = find();
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
  if (told + 1 === most) shelf.diagnostics.push(noMoreTold(name.at, most));
  return 1;
}
