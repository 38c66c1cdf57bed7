import type { LimitNode, MarginNode, OftenNode, PercentNode, SpanNode, TaskClauseNode } from '../../syntax/tree.js';
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { Rule } from '../context.js';
import { limitsIn } from '../limits.js';
import type { Home, Model, PlacedDeclaration } from '../model.js';
import { amountOf, calendarAmountOf, delayOf, shortfallOf } from '../quantities/amount.js';
import { readingsInOccasion } from '../quantities/occasion.js';
import { problem, type Read } from '../quantities/read.js';
import { readingsInCondition, readingsInDeclaration, readingsInReads } from '../quantities/readings.js';
import { newtonMetresOf, suppliedAmount } from '../quantities/work.js';
import { secondsOf, unitOf } from '../quantities/units.js';
import { diagnostic } from '../report.js';
import { stageSpans } from '../quantities/stage-spans.js';

/** What can be wrong with a quantity. */
export const quantityCodes: Rule['codes'] = [
  'wrongUnit',
  'unknownUnit',
  'emptySpan',
  'unclearMeter',
  'fractionalSpan',
  'impossibleNumber',
  'unknownWord',
  'bandWithoutEdge',
];

/** Every quantity measures what is wanted in its place, in a unit that exists, and is a number that makes sense there. */
export const quantities: Rule = {
  codes: quantityCodes,
  scope: 'declaration',
  check: ({ model }) => model.declarations.flatMap((declaration) => problems(readingsIn(model, declaration))),
};

/** As many times as a calendar period may ask for. */
const MOST_TIMES = 366;

/** What a quantity was read as; nothing where it is read elsewhere. */
export type Reading = Read<unknown> | undefined;

/** What is wrong with quantities, where anything is. */
export function problems(readings: readonly Reading[]): readonly Diagnostic[] {
  return readings.flatMap((read) => {
    if (read === undefined || 'value' in read) return [];
    const { code, ...finding } = read.problem;
    return [diagnostic(code, finding)];
  });
}

function readingsIn(model: Model, declaration: PlacedDeclaration): readonly Reading[] {
  const { node, home } = declaration;
  if (node.kind === 'task') return node.clauses.flatMap((clause) => inClause(model, home, clause));
  if (node.kind === 'step')
    return node.clauses.flatMap((clause) =>
      clause.kind === 'takes'
        ? [secondsOf(clause.time)]
        : clause.kind === 'while-stance'
          ? readingsInCondition(model, home, clause.condition)
          : [],
    );
  if (node.kind === 'defect')
    return node.rules.flatMap(({ outcome }) => outcome.then.map(({ within }) => within && delayOf(model, home, within)));
  return readingsInDeclaration(model, home, node);
}

function inClause(model: Model, home: Home, clause: TaskClauseNode): readonly Reading[] {
  switch (clause.kind) {
    case 'every':
      return limitsIn(clause.plan).flatMap((limit) => inLimit(model, home, limit));
    case 'first':
      return clause.what.kind === 'plan'
        ? limitsIn(clause.what.plan).flatMap((limit) => inLimit(model, home, limit))
        : spans(model, home, stageSpans(clause.what.spans));
    case 'series':
      return spans(model, home, stageSpans(clause.spans));
    case 'in-duty':
      return spans(model, home, [clause.span]);
    case 'while-every':
      return [
        ...readingsInCondition(model, home, clause.condition),
        ...limitsIn(clause.plan).flatMap((limit) => inLimit(model, home, limit)),
      ];
    case 'when':
    case 'with':
    case 'only-if':
    case 'unless':
      return readingsInCondition(model, home, clause.condition);
    case 'occasion':
      return readingsInOccasion(model, home, clause.what);
    case 'sooner':
      return [
        clause.share > 0 && clause.share <= 1
          ? undefined
          : problem('impossibleNumber', {
              at: clause.at,
              message: 'The share of the time has to be more than nothing and at most all of it.',
              help: 'Write `half`, `a third`, `a quarter` or a percentage up to 100 %.',
            }),
      ];
    case 'allow':
      return clause.sides.flatMap(({ margin }) => inMargin(margin));
    case 'lead':
      return clause.margins.flatMap((margin) => inMargin(margin));
    case 'hold':
      return clause.margin === undefined ? [] : inMargin(clause.margin, true);
    case 'record':
      return clause.terms.map((term) => (term.kind === 'span' ? calendarAmountOf(term) : undefined));
    case 'takes':
      return [secondsOf(clause.time)];
    case 'reads':
      return readingsInReads(model, home, clause);
    case 'uses':
      return clause.items.map((item) => {
        const supply = model.meaning.get(item.supply);
        return supply?.node.kind === 'supply' ? suppliedAmount(item, { ...supply, kind: 'supply', node: supply.node }) : undefined;
      });
    case 'tighten':
      return [newtonMetresOf(clause.torque)];
    default:
      return [];
  }
}

function spans(model: Model, home: Home, all: readonly SpanNode[]): readonly Reading[] {
  return all.map((span) => amountOf(model, home, span));
}

/** The quantities of a limit. */
export function inLimit(model: Model, home: Home, limit: LimitNode): readonly Reading[] {
  switch (limit.kind) {
    case 'interval':
      return [
        ...spans(model, home, [limit.span]),
        ...howOften(limit.often, 'Once in each is the span alone, without a number.'),
        limit.standstill?.atLeast && calendarAmountOf(limit.standstill.atLeast),
      ];
    case 'multiple':
      return spans(model, home, [limit.span]);
    case 'look':
      return [...spans(model, home, [limit.span]), chance(limit.finding), chance(limit.missing)];
    case 'weekdays':
      return [];
    case 'calendar-period':
      return howOften(limit.often, `Once in each is \`every calendar ${limit.unit.text}\`, without a number.`);
    case 'calendar-marks':
    case 'calendar-window': {
      const number = limit.number;
      if (number === undefined || (Number.isInteger(number.value) && number.value >= 1 && number.value <= 1200)) return [];
      return [
        problem('impossibleNumber', {
          at: number.at,
          message: `Marks come every whole number of months or years, not every ${number.text}.`,
        }),
      ];
    }
  }
}

function howOften(often: OftenNode | undefined, once: string): readonly Reading[] {
  if (often === undefined) return [];
  const { times, apart } = often;
  const sound = Number.isInteger(times.value) && times.value >= 2 && times.value <= MOST_TIMES;
  const help = times.value === 1 ? { help: once } : {};
  const message = `It can be asked for 2 to ${MOST_TIMES} times, not ${times.text}.`;
  return [sound ? undefined : problem('impossibleNumber', { at: times.at, message, ...help }), apart && calendarAmountOf(apart)];
}

function chance({ at, number }: PercentNode): Reading {
  if (number.value > 0 && number.value < 100) return undefined;
  return problem('impossibleNumber', {
    at,
    message: `A chance of ${number.text} % leaves nothing to work out.`,
    help: 'Write a percentage above 0 and below 100.',
  });
}

/** A margin's spans need no `of`: each limit takes those that go with it. A stop may come at once, by a margin of nothing. */
function inMargin(margin: MarginNode, orNothing = false): readonly Reading[] {
  switch (margin.kind) {
    case 'percent': {
      const { at, number } = margin;
      if (number.value > 0 && number.value < 100) return [];
      return [
        problem('impossibleNumber', {
          at,
          message: `A margin of ${number.text} % makes no sense.`,
          help: 'Write a percentage above 0 and below 100.',
        }),
      ];
    }
    case 'lesser':
      return [...inMargin(margin.first), ...inMargin(margin.second)];
    case 'span':
      return [orNothing && margin.number.value === 0 ? undefined : positive(margin), unitOf(margin.unit), shortfallOf(margin)];
  }
}

function positive({ number, unit }: SpanNode): Reading {
  if (number.value > 0) return undefined;
  return problem('emptySpan', {
    at: number.at,
    message: `A margin has to be more than nothing, and \`${number.text} ${unit.text}\` is not.`,
    help: 'Leave it out where there is none.',
  });
}
