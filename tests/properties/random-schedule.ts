/**
 * Random schedules as text, so that parser, checker and compiler are part of what the properties hold.
 */
import fc from 'fast-check';
import { header } from '../support/compile-text.js';

/** What every random machine has: two hour meters, a gauge, a dipstick, duties, an attachment, a part, an event and a defect. */
export const MACHINE = `
meter engine "Hour meter" counts h
meter shaft "Shaft counter" counts h
gauge coolant "Coolant gauge" reads °C  normal 75 to 90  high above 97
gauge tyre "Tyre gauge" reads kPa fresh for 30 days
dipstick oil "Oil dipstick" low to full is 2 L
duty dusty "Dusty ground"
duty steep "Steep ground"
attachment mower "Mower"
position loader lowered, raised
at rest loader lowered
event refit "A wheel was refitted"
event bulletin "The maker has written" on 2026-03-20
defect seep "Seep" classes wetness, drops-form, drops-fall
  drops-fall hold "Do not work: drops fall."
`;

const hours = (least: number, most: number): fc.Arbitrary<string> =>
  fc.tuple(fc.integer({ min: least, max: most }), fc.constantFrom('engine', 'shaft')).map(([n, meter]) => `${n} h of ${meter}`);
const calendar = fc.oneof(
  fc.integer({ min: 1, max: 60 }).map((n) => `${n} days`),
  fc.integer({ min: 1, max: 8 }).map((n) => `${n} weeks`),
  fc.integer({ min: 1, max: 14 }).map((n) => `${n} months`),
  fc.integer({ min: 1, max: 12 }).map((n) => `${n} calendar months`),
);
const work = fc
  .tuple(fc.integer({ min: 20, max: 600 }), fc.constantFrom('', ' in dusty', ' in steep'))
  .map(([n, duty]) => `${n} min of work${duty}`);
const span = fc.oneof(hours(2, 200), calendar, work);
const mark = fc.constantFrom(
  'month on day 15, day 30',
  'month on day 31 where it exists',
  'year on 1 April',
  '2 years on 1 November',
  'year in April',
  'year in March',
  '3 months on day 31',
  'calendar month',
  'calendar year',
);
const term = fc.oneof(
  { weight: 5, arbitrary: span },
  { weight: 1, arbitrary: hours(5, 60).map((each) => `multiple of ${each}`) },
  { weight: 1, arbitrary: mark },
  { weight: 1, arbitrary: hours(5, 60).map((each) => `more than ${each}`) },
);
const plan = fc.oneof(
  term,
  fc.tuple(term, term, fc.constantFrom('first', 'last')).map(([a, b, mode]) => `${a} or ${b}, whichever ${mode}`),
  fc
    .tuple(term, span, span, fc.constantFrom('first', 'last'), fc.constantFrom('first', 'last'))
    .map(([a, b, c, inner, outer]) => `${a} or (${b} or ${c}, whichever ${inner}), whichever ${outer}`),
);

const fact = fc.oneof(
  fc
    .integer({ min: 60, max: 110 })
    .chain((value) => fc.constantFrom('above', 'below', 'at least', 'at most').map((how) => `coolant ${how} ${value} °C`)),
  fc.constantFrom(
    'coolant above normal',
    'coolant from 70 °C to 80 °C',
    'oil below low',
    'oil above full',
    'oil at most low',
    'tyre below 200 kPa',
  ),
  fc.integer({ min: 10, max: 300 }).map((value) => `engine above ${value} h`),
  fc.constantFrom(
    'coolant climbs 6 °C within 20 min',
    'coolant falls 5 °C within 60 min',
    'oil read within 7 days',
    'refit happened within 20 h of engine',
    'refit happened within 14 days',
    'refit happened 2 times within 14 days',
    'no outing since beta',
    'refit ever happened',
    'bulletin ever happened',
    'bulletin happened within 14 days',
    'machine at work',
  ),
  fc.constantFrom('seep is open', 'seep worse than wetness', 'loader is raised', 'mower is on', 'mower is off', 'in dusty'),
  fc.constantFrom(
    'machine older than 4 months',
    'machine idle for 10 days',
    'date from 1 March to 31 May',
    'date from 1 November to 15 February',
  ),
);
const condition = fc.oneof(
  { weight: 3, arbitrary: fact },
  { weight: 1, arbitrary: fc.tuple(fact, fact).map(([a, b]) => `${a} and ${b}`) },
  { weight: 1, arbitrary: fc.tuple(fact, fact).map(([a, b]) => `${a} or ${b}`) },
  { weight: 1, arbitrary: fact.map((each) => `not ${each}`) },
  { weight: 1, arbitrary: fc.tuple(fact, fact, fact).map(([a, b, c]) => `${a} and (${b} or not ${c})`) },
);

const occasion = fc.constantFrom(
  "before each day's work",
  'before each outing',
  'before each shift',
  'before storage',
  'after work',
  "after each day's work",
  'after each outing',
  'after each shift',
  'after storage',
  'after attaching mower',
  'on refuelling',
  'on each day of work',
  'within 3 h before each shift',
  'within 2 h before each outing',
  "within 20 h before each day's work",
  'on refit',
  'on bulletin',
);
const byTheCalendar = fc.constantFrom(
  'Monday',
  'Monday and Thursday',
  'calendar half-year',
  'calendar year 2 times',
  'calendar quarter 3 times',
  'calendar month 2 times',
  '1 calendar quarters',
  '1 months plus 15 days',
  '20 days, not counting storage',
  '20 days, not counting storage of 5 days or more',
  '1 months, not counting storage of 2 weeks or more',
  '60 days 2 times',
  '40 h of engine 2 times',
  '2 months 2 times, 10 days apart',
  'month on the first Monday',
  'month on the last Friday and the second Sunday',
  'year on the third Tuesday of May',
  '2 weeks on Monday and Thursday from 2026-03-05',
  'calendar week',
  'calendar week 2 times, 2 days apart',
  'calendar month 2 times, 10 days apart',
);
const timing = fc.oneof(
  { weight: 4, arbitrary: plan.map((each) => `every ${each}`) },
  { weight: 1, arbitrary: byTheCalendar.map((each) => `every ${each}`) },
  { weight: 2, arbitrary: occasion },
  { weight: 2, arbitrary: condition.map((each) => `when ${each}`) },
  {
    weight: 1,
    arbitrary: span.chain((each) =>
      fc.constantFrom('seep is open', 'coolant above normal', 'in dusty').map((what) => `while ${what} every ${each}`),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      'at 1 h, 10 h, 50 h of engine after refit',
      'within 5 h of engine after refit',
      'within 10 days after refit',
      'within 10 h of engine after bulletin',
      'within 20 days after bulletin',
      'at 5 h, 15 h of engine after bulletin',
      'within 2 calendar months after refit',
      'after 2 times refit',
      'after 3 times refit',
    ),
  },
  { weight: 1, arbitrary: fc.constant('sooner at half the time that oil takes to fall to low') },
);

const first = fc.constantFrom(
  '',
  'first at 20 h of engine',
  'first at 10 h, 30 h of engine',
  'first at 20 h of engine or 30 days, whichever first',
  'first at 20 h of engine after refit',
);
const extra = fc.constantFrom(
  '',
  '',
  'count from due if late',
  'count from due within the allowance',
  'allow 10 % late',
  'allow 10 % early, 10 % late',
  'count from due within the allowance allow 1 months less 1 day early, 1 calendar months late',
  'lead 20 %',
  'hold when overdue "Do not work: too late."',
);
const gate = fc.oneof(
  { weight: 4, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: condition.map((each) => `only if ${each}`) },
  { weight: 1, arbitrary: condition.map((each) => `unless ${each}`) },
);
const duty = fc.constantFrom('', '', '', 'in dusty every 20 h of engine\n  in steep every 10 h of engine');
const reads = (next: string): fc.Arbitrary<string> =>
  fc.constantFrom(
    '',
    '',
    '',
    `reads oil\n    below low hold "Too low." then ${next} now\n    low to full fine\n    above full caution "Overfilled." then ${next} within 2 days`,
    `reads coolant\n    below 60 °C fine\n    60 °C to 97 °C fine\n    above 97 °C hold "Too hot." then ${next} within 5 h of engine`,
  );

const TASKS = ['alpha', 'beta', 'gamma', 'delta'] as const;

function task(index: number): fc.Arbitrary<string> {
  const name = TASKS[index] ?? 'alpha';
  const next = TASKS[index + 1];
  const link =
    next === undefined
      ? fc.constant('')
      : fc.constantFrom('', '', '', `covers ${next}`, `restarts ${next}`, `mends seep`, ...(index < 2 ? [`met by ${next}, delta`] : []));
  return fc
    .record({
      timings: fc.array(timing, { minLength: 1, maxLength: 3 }),
      first,
      extra,
      gate,
      duty,
      link,
      reads: next === undefined ? fc.constant('') : reads(next),
      // What its rules come after: the event, or work on another task.
      after: fc.constantFrom('refit', 'refit', ...TASKS.filter((other) => other !== name)),
    })
    .map((parts) => {
      const hasEvery = parts.timings.some((each) => each.startsWith('every'));
      const mixes = parts.timings.some((each) => /^every \d+ h of engine$/.test(each));
      return [
        `task ${name} "Task ${name}"`,
        hasEvery ? parts.first : '',
        ...parts.timings,
        mixes ? parts.duty : '',
        hasEvery ? parts.extra : '',
        parts.gate,
        parts.link,
        parts.reads,
      ]
        .filter((line) => line !== '')
        .map((line) => line.replace(/\b(after|on) refit$/, `$1 ${parts.after}`))
        .join('\n  ');
    });
}

/** The text of a whole schedule with four tasks. Some of them do not pass the checker: the caller leaves those out. */
export const scheduleText: fc.Arbitrary<string> = fc
  .tuple(task(0), task(1), task(2), task(3))
  .map((tasks) => `${header}${MACHINE}\n${tasks.join('\n\n')}\n`);
