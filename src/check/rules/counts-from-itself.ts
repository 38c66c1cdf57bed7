import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { NameNode, TaskNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import type { Model } from '../model.js';
import { diagnostic } from '../report.js';
import { ticked } from '../words.js';

/** How many tasks are looked at in all: in a schedule that ties thousands together no more is told. */
const MOST_LOOKED_AT = 50_000;

/** What a task comes after is not done by doing the task itself: it would begin anew with each doing, and never be over. */
export const countsFromItself: Rule = {
  codes: ['countsFromItself'],
  scope: 'schedule',
  check: ({ model }) => {
    const uses = tasksIn(model).flatMap(({ node }) => happeningsIn(node).map((name) => ({ node, name })));
    const after = uses.flatMap(({ node, name }) => {
      const task = model.meaning.get(name)?.node;
      return task?.kind === 'task' ? [{ node, name, task }] : [];
    });
    if (after.length === 0) return [];
    const doers = doersIn(model);
    const budget = { left: MOST_LOOKED_AT };
    return after.flatMap(({ node, name, task }) => (doesToo(doers, task, node, budget) ? [describe(node, name, task)] : []));
  },
};

function describe(node: TaskNode, name: NameNode, task: TaskNode): Diagnostic {
  const [own, other] = [ticked(node.name.text), ticked(name.text)];
  return diagnostic('countsFromItself', {
    at: name.at,
    message: task === node ? `${own} comes after itself.` : `${own} comes after ${other}, which doing ${own} does as well.`,
    help: 'What comes round is `every …`; what comes after other work names that work.',
  });
}

/** The names that a task's timing counts from or comes after. */
function happeningsIn({ clauses }: TaskNode): readonly NameNode[] {
  return clauses.flatMap((clause) => {
    if (clause.kind === 'series') return [clause.event];
    if (clause.kind === 'first') return clause.after === undefined ? [] : [clause.after];
    return clause.kind === 'occasion' && clause.what.when === 'event' ? [clause.what.event] : [];
  });
}

type Doers = ReadonlyMap<TaskNode, readonly TaskNode[]>;

/** For each task those whose doing may be a doing of it: what covers it, and what it is met by. */
function doersIn(model: Model): Doers {
  const doers = new Map<TaskNode, TaskNode[]>();
  const add = (task: TaskNode, doer: TaskNode): void => {
    const known = doers.get(task);
    if (known === undefined) doers.set(task, [doer]);
    else known.push(doer);
  };
  for (const { node } of tasksIn(model)) {
    for (const covered of namedBy(model, node, 'covers')) add(covered, node);
    for (const part of namedBy(model, node, 'met-by')) add(node, part);
  }
  return doers;
}

/** Whether doing `doer` may be a doing of `task`. */
function doesToo(doers: Doers, task: TaskNode, doer: TaskNode, budget: { left: number }): boolean {
  const found = new Set([task]);
  for (const each of found) {
    if (each === doer) return true;
    if ((budget.left -= 1) < 0) return false;
    for (const next of doers.get(each) ?? []) found.add(next);
  }
  return false;
}

function namedBy(model: Model, { clauses }: TaskNode, kind: 'covers' | 'met-by'): readonly TaskNode[] {
  return clauses.flatMap((clause) => {
    if (clause.kind !== kind) return [];
    return clause.names.flatMap((name) => {
      const named = model.meaning.get(name)?.node;
      return named?.kind === 'task' ? [named] : [];
    });
  });
}
