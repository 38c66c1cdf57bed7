import { addTo } from '../../base/gather.js';
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { NameNode, TaskNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import type { Model } from '../model.js';
import { diagnostic } from '../report.js';
import { taskNamed, tasksNamed } from '../tasks-named.js';
import { ticked } from '../words.js';

/** How many tasks are looked at in all: in a schedule that ties thousands together no more is told. */
const MOST_LOOKED_AT = 50_000;

/** What a task comes after is not done by doing the task itself: it would begin anew with each doing, and never be over. */
export const countsFromItself: Rule = {
  codes: ['countsFromItself'],
  scope: 'schedule',
  check: ({ model }) => {
    const after = tasksIn(model).flatMap(({ node }) =>
      happeningsIn(node).flatMap((name) => taskNamed(model, name).map(({ task }) => ({ node, name, task }))),
    );
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
    return clause.kind === 'occasion' && 'event' in clause.what ? [clause.what.event] : [];
  });
}

type Doers = ReadonlyMap<TaskNode, readonly TaskNode[]>;

/** For each task those whose doing may be a doing of it: what covers it, and what it is met by. */
function doersIn(model: Model): Doers {
  const doers = new Map<TaskNode, TaskNode[]>();
  for (const { node } of tasksIn(model)) {
    for (const { task } of tasksNamed(model, node, 'covers')) addTo(doers, task, node);
    for (const { task } of tasksNamed(model, node, 'met-by')) addTo(doers, node, task);
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
