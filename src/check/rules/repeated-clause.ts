import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { Span } from '../../base/span.js';
import type { LimitNode, TaskNode } from '../../syntax/tree.js';
import { weekdayName } from '../../values/calendar.js';
import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { placed } from '../model.js';
import { diagnostic } from '../report.js';

const single: ReadonlyMap<string, string> = new Map([
  ['first', 'first at'],
  ['count', 'count from'],
  ['takes', 'takes'],
  ['place-at', 'at'],
  ['for-serial', 'for serial'],
  ['back', 'back'],
  ['lead', 'lead'],
  ['record', 'record kept'],
]);

/** Some clauses can only count once in a task or a step, and a day of the week once in a clause. */
export const repeatedClause: Rule = {
  codes: ['repeatedClause'],
  scope: 'declaration',
  check: ({ model, nodes }) => [
    ...[...placed(model, 'task'), ...placed(model, 'step')].flatMap(({ node }) => [
      ...repeats(node.clauses),
      ...(node.kind === 'task' ? sameDuty(node) : []),
    ]),
    ...nodes.all<Extract<LimitNode, { kind: 'weekdays' }>>('weekdays').flatMap(sameDay),
  ],
};

function repeats(clauses: readonly { readonly kind: string; readonly at: Span }[]): readonly Diagnostic[] {
  if (clauses.length < 2) return [];
  const first = new Map<string, Span>();
  return clauses.flatMap(({ kind, at }) => {
    const word = single.get(kind);
    const earlier = first.get(kind);
    if (earlier === undefined) first.set(kind, at);
    return word === undefined || earlier === undefined ? [] : [twice(word, at, earlier)];
  });
}

function sameDuty({ clauses }: TaskNode): readonly Diagnostic[] {
  const duties = clausesOf(clauses, 'in-duty');
  if (duties.length < 2) return [];
  const first = new Map<string, Span>();
  return duties.flatMap(({ at, duty }) => {
    const earlier = first.get(duty.text);
    if (earlier === undefined) first.set(duty.text, at);
    return earlier === undefined ? [] : [twice(`in ${duty.text}`, at, earlier)];
  });
}

function sameDay({ days }: Extract<LimitNode, { kind: 'weekdays' }>): readonly Diagnostic[] {
  return days.flatMap(({ weekday, at }, index) => {
    const earlier = days.slice(0, index).find((day) => day.weekday === weekday);
    return earlier === undefined ? [] : [twice(weekdayName(weekday) ?? '', at, earlier.at)];
  });
}

function twice(word: string, at: Span, earlier: Span): Diagnostic {
  return diagnostic('repeatedClause', {
    at,
    message: `\`${word}\` stands here a second time, and only one can count.`,
    labels: [{ at: earlier, text: 'first here' }],
    help: 'Take one of the two out.',
  });
}
