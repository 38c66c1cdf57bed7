/** Random schedules of interval rules, and random machine lines for them. */
import fc from 'fast-check';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { MachineLine } from '../../src/fleet/machine-line.js';
import { formatDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';
import { compiled } from '../properties/situation.js';
import { header } from '../support/compile-text.js';

/** 2026-01-01 */
export const START = 20454;

const hours = fc.tuple(fc.integer({ min: 2, max: 200 }), fc.constantFrom('engine', 'shaft')).map(([n, meter]) => `${n} h of ${meter}`);
const calendar = fc.oneof(
  fc.integer({ min: 1, max: 60 }).map((n) => `${n} days`),
  fc.integer({ min: 1, max: 14 }).map((n) => `${n} months`),
  fc.integer({ min: 1, max: 12 }).map((n) => `${n} calendar months`),
);
const span = fc.oneof(hours, hours, calendar);
const term = fc.oneof(
  { weight: 5, arbitrary: span },
  { weight: 1, arbitrary: hours.map((each) => `multiple of ${each}`) },
  { weight: 1, arbitrary: span.map((each) => `more than ${each}`) },
);
const plan = fc.oneof(
  term,
  fc.tuple(term, term, fc.constantFrom('first', 'first', 'last')).map(([a, b, mode]) => `${a} or ${b}, whichever ${mode}`),
  fc
    .tuple(term, span, span, fc.constantFrom('first', 'last'), fc.constantFrom('first', 'last'))
    .map(([a, b, c, inner, outer]) => `${a} or (${b} or ${c}, whichever ${inner}), whichever ${outer}`),
);
const first = fc.constantFrom(
  '',
  '',
  'first at 20 h of engine',
  'first at 10 h, 30 h, 90 h of shaft',
  'first at 20 h of engine or 30 h of shaft, whichever first',
);
const extra = fc.constantFrom(
  '',
  '',
  'allow 10 % late',
  'allow 3 h early, 5 h late',
  'allow 5 days late',
  'lead 20 %',
  'hold when overdue "Stop."',
  'for serial 1 to 50',
);

const taskNames = ['alpha', 'beta', 'gamma', 'delta'] as const;
const tie = fc.constantFrom('', '', '', 'covers beta', 'restarts gamma');

/** Interval rules only, so that every task goes into columns. */
export const intervalSchedule: fc.Arbitrary<{ readonly text: string; readonly graph: RuleGraph }> = fc
  .array(fc.record({ plan, first, extra, tie }), { minLength: 4, maxLength: 4 })
  .map((tasks) => {
    const declared = tasks.map(
      (task, i) =>
        `task ${taskNames[i] ?? ''} "T${i}"\n  every ${task.plan}\n  ${task.first}\n  ${task.extra}\n  ${i === 0 ? task.tie : ''}\n`,
    );
    const text = `${header}meter engine "Hour meter" counts h\nmeter shaft "Shaft counter" counts h\n${declared.join('')}`;
    return { text, graph: compiled(text) };
  })
  .filter((each): each is { text: string; graph: RuleGraph } => each.graph !== null)
  // What a person needs to see of one that fails.
  .map((each) => ({ ...each, [fc.toStringMethod]: () => each.text.slice(each.text.indexOf('task')) }));

const day = fc.integer({ min: 0, max: 300 });
const dayText = (n: number): string => formatDate((START + n) as Day);

/** Where the meters truly stood on a day; now and then a wrong number. */
function metersOn(n: number, engine: string, shaft: string): Record<string, number> {
  const wrong = n % 2 === 0 ? 400 : 0;
  return {
    ...(engine === 'none' ? {} : { engine: engine === 'true' ? n * 1.5 : n + wrong }),
    ...(shaft === 'none' ? {} : { shaft: n * 0.35 }),
  };
}
const noted = fc.record({
  engine: fc.oneof(
    { weight: 8, arbitrary: fc.constant('true') },
    { weight: 3, arbitrary: fc.constant('none') },
    { weight: 1, arbitrary: fc.constant('wrong') },
  ),
  shaft: fc.constantFrom('none', 'true', 'true'),
});

export const machineLine: fc.Arbitrary<MachineLine> = fc
  .record({
    name: fc.integer({ min: 1, max: 9999 }),
    read: fc.option(day, { nil: undefined, freq: 8 }),
    inService: fc.constantFrom(undefined, 0, 0, 40),
    serial: fc.constantFrom(undefined, 10, 70),
    noted,
    done: fc.uniqueArray(fc.record({ task: fc.constantFrom(...taskNames), on: day, noted }), {
      selector: ({ task }) => task,
      maxLength: 4,
    }),
  })
  .map(({ name, read, inService, serial, noted: at, done }) => ({
    machine: `m-${name}`,
    ...(read === undefined ? {} : { on: dayText(read), meters: metersOn(read, at.engine, at.shaft) }),
    ...(inService === undefined ? {} : { inService: dayText(inService) }),
    ...(serial === undefined ? {} : { serial }),
    done: Object.fromEntries(
      done.map((each) => [each.task, { on: dayText(each.on), meters: metersOn(each.on, each.noted.engine, each.noted.shaft) }]),
    ),
  }));
