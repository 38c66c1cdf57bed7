import type { Span } from '../../base/span.js';
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import { daysBeyond } from '../../graph/calendar-amount.js';
import type { Amount, CalendarAmount } from '../../graph/rule-graph.js';
import type { PlanNode, StandstillNode, TaskNode } from '../../syntax/tree.js';
import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import type { Home, Model } from '../model.js';
import { amountOf } from '../quantities/amount.js';
import { valueOf } from '../quantities/read.js';
import { diagnostic } from '../report.js';

interface Part {
  readonly at: Span;
  readonly amount: Amount;
  /** Storage that it does not count. */
  readonly standstill?: string;
}

/** Of two limits on one axis only one ever has a say: the shorter of whichever first, the longer of whichever last. */
export const neverGoverns: Rule = {
  codes: ['neverGoverns'],
  scope: 'declaration',
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) => {
      const plans = clausesOf(node.clauses, 'every').map(({ plan }) => plan);
      const inside = node.clauses.flatMap((clause) =>
        clause.kind === 'every' || clause.kind === 'while-every' ? inPlan(model, home, clause.plan) : [],
      );
      const separate =
        plans.length < 2
          ? []
          : judge(
              plans.flatMap((plan) => partOf(model, home, plan)),
              'first',
            );
      return [...inside, ...separate, ...duties(model, home, node)];
    }),
};

function inPlan(model: Model, home: Home, plan: PlanNode): readonly Diagnostic[] {
  if (plan.kind !== 'whichever') return [];
  const parts = plan.parts.flatMap((part) => partOf(model, home, part));
  return [...judge(parts, plan.mode ?? 'first'), ...plan.parts.flatMap((part) => inPlan(model, home, part))];
}

function partOf(model: Model, home: Home, plan: PlanNode): readonly Part[] {
  // So many times within a long span may ask before once within a short one.
  if (plan.kind !== 'interval' || plan.often !== undefined) return [];
  const read = amountOf(model, home, plan.span);
  const amount = read === undefined ? undefined : valueOf(read);
  const { standstill } = plan;
  if (amount === undefined) return [];
  return [{ at: plan.at, amount, ...(standstill === undefined ? {} : { standstill: writtenOf(standstill) }) }];
}

function judge(parts: readonly Part[], mode: 'first' | 'last'): readonly Diagnostic[] {
  return parts.flatMap((part, index) => {
    const winner = parts.find(
      (other, place) => place !== index && beats(other, part, mode) && !(place > index && beats(part, other, mode)),
    );
    if (winner === undefined) return [];
    const how = mode === 'first' ? 'always comes before' : 'always comes after';
    return [
      diagnostic('neverGoverns', {
        at: part.at,
        message: 'This limit never has a say.',
        labels: [{ at: winner.at, text: `this one ${how} it` }],
        help: 'Take it out, or correct one of the two.',
      }),
    ];
  });
}

function beats(winner: Part, loser: Part, mode: 'first' | 'last'): boolean {
  return mode === 'first' ? never(winner, loser) : never(loser, winner);
}

/** Whether one is never longer than the other; one that stands still in storage may always be, unless the other does too. */
function never(longer: Part, than: Part): boolean {
  return (longer.standstill === undefined || longer.standstill === than.standstill) && notLonger(longer.amount, than.amount);
}

function writtenOf({ atLeast }: StandstillNode): string {
  return atLeast === undefined ? '' : `${atLeast.number.text} ${atLeast.unit.text}`;
}

/** Whether `a` is never longer than `b`, for sure: a month has 28 to 31 days. */
function notLonger(a: Amount, b: Amount): boolean {
  if (a.on === 'meter' && b.on === 'meter') return a.meter === b.meter && a.ticks <= b.ticks;
  if (a.on === 'work' && b.on === 'work') return a.duty === b.duty && a.ticks <= b.ticks;
  if (a.on !== 'calendar' || b.on !== 'calendar') return false;
  return shorterOnCalendar(a, b);
}

function shorterOnCalendar(a: CalendarAmount, b: CalendarAmount): boolean {
  const [over, under] = [daysBeyond(a), daysBeyond(b)];
  if (a.unit === b.unit && (a.period ?? 1) <= (b.period ?? 1))
    return a.count < b.count ? over - under < 28 : a.count === b.count && over <= under;
  if (a.unit === 'months' && b.unit === 'calendar-months') return a.count <= b.count && over <= under;
  if (a.unit === 'days' && b.unit !== 'minutes') return a.count <= b.count * 28 + under;
  return a.unit === 'months' && b.unit === 'days' && a.count * 31 + over <= b.count;
}

function duties(model: Model, home: Home, task: TaskNode): readonly Diagnostic[] {
  const inDuties = clausesOf(task.clauses, 'in-duty');
  if (inDuties.length === 0) return [];
  const ordinary = clausesOf(task.clauses, 'every').flatMap(({ plan }) => intervals(model, home, plan));
  return inDuties.flatMap(({ at, span }) => {
    const read = amountOf(model, home, span);
    const amount = read === undefined ? undefined : valueOf(read);
    const longer = amount === undefined ? undefined : ordinary.find((each) => notLonger(each.amount, amount));
    if (longer === undefined) return [];
    return [
      diagnostic('neverGoverns', {
        at,
        message: 'In this duty the work comes round no sooner than in ordinary work.',
        labels: [{ at: longer.at, text: 'the ordinary interval' }],
        help: 'Write a shorter interval for the duty, or take the clause out.',
      }),
    ];
  });
}

function intervals(model: Model, home: Home, plan: PlanNode): readonly Part[] {
  return plan.kind === 'whichever' ? plan.parts.flatMap((part) => intervals(model, home, part)) : partOf(model, home, plan);
}
