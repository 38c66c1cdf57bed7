/**
 * Brings together what a schedule is made of, from the file that was asked for on.
 */
import { positionOf } from '../../base/source-text.js';
import type { HeaderNode } from '../../syntax/tree.js';
import type { Home, PlacedDeclaration } from '../model.js';
import { diagnostic } from '../report.js';
import { openFirst, type OpenFile, type Shelf } from './shelf.js';

/** What a schedule is made of. */
export interface Gathered {
  /** Headers of all files opened, the first one's first. */
  readonly headers: readonly HeaderNode[];
  /** Up to the limit on rules. */
  readonly declarations: readonly PlacedDeclaration[];
  /** Whether there were more. */
  readonly cut: boolean;
}

const machine: Home = { prefix: '', host: undefined };

/** What a file is made of: the declarations, with the headers of all that was opened for them put to those that are known. */
export type Bring = (shelf: Shelf, headers: HeaderNode[], file: OpenFile, home: Home) => readonly PlacedDeclaration[];

/** Opens `path` and all that it leads to. Undefined where the file itself cannot be read as a schedule. */
export function gather(shelf: Shelf, path: string, bring: Bring): Gathered | undefined {
  const tree = openFirst(shelf, path);
  if (tree === undefined) return undefined;
  if (tree.header.role === 'part') {
    const help = 'Check the schedule that uses it.';
    shelf.diagnostics.push(
      diagnostic('wrongRole', {
        at: tree.header.at,
        message: `\`${tree.header.name.text}\` is a part, which means nothing by itself.`,
        help,
      }),
    );
  }
  const headers: HeaderNode[] = [];
  const declarations = bring(shelf, headers, { path, tree }, machine);
  const kept = withinLimit(shelf, declarations);
  return { headers, declarations: kept, cut: kept.length < declarations.length };
}

function withinLimit(shelf: Shelf, declarations: readonly PlacedDeclaration[]): readonly PlacedDeclaration[] {
  let rules = 0;
  const over = declarations.findIndex(({ node }) => (rules += weight(node)) > shelf.limits.rules);
  const culprit = declarations[over];
  if (culprit === undefined) return declarations;
  const source = shelf.sources[culprit.node.at.file];
  const place = source === undefined ? '' : ` of \`${source.name}\`, line ${positionOf(source, culprit.node.at.start).line}`;
  const message = `A schedule may hold at most ${shelf.limits.rules} rules, and this ${culprit.node.kind}${place} goes past that.`;
  shelf.diagnostics.push(
    diagnostic('limitReached', { at: culprit.node.at, message, help: 'Split the schedule, or raise the limit where the host allows it.' }),
  );
  return declarations.slice(0, over);
}

const timing = new Set(['every', 'first', 'series', 'in-duty', 'while-every', 'when', 'occasion', 'sooner']);

/** A task counts once for each of its timing clauses, anything else once. */
function weight(node: PlacedDeclaration['node']): number {
  return node.kind === 'task' ? Math.max(1, node.clauses.filter(({ kind }) => timing.has(kind)).length) : 1;
}
