/**
 * Random schedules that between them use every construct of the language, as text: parser, checker and compiler take part in what is compared.
 */
import fc from 'fast-check';
import { countsSpans, hasOneForDuty, isOften, limitsIn, suits } from './differential-margins.js';

/** The files of a schedule by name; `tried.due` is the schedule. */
export type Files = Readonly<Record<string, string>>;

const HEAD = `
  language 1
  edition 1 of 2026-01-01 by "Test bench"
  fits model "T" serial 1 to 999
`;

/** Everything that a random machine has. */
const MACHINE = `meter engine "Hour meter" counts h
meter shaft "Shaft counter" counts h
meter road "Distance counter" counts km
meter mowing "Hours out" counts h from outings
meter served "Days out" counts service-days from outings
gauge coolant "Coolant gauge" reads °C  normal 75 to 90  high above 97
gauge tyre "Tyre gauge" reads kPa fresh for 20 days
gauge belt "Belt gauge" reads mm fresh for 90 min
dipstick oil "Oil dipstick" low to full is 2 L
dipstick hydraulic "Hydraulic dipstick" low to full is 3 L fresh for 30 days
duty dusty "Dusty ground"
duty steep "Steep ground"
attachment mower "Mower" follows "mower.due"
attachment fork "Fork"
position loader lowered, raised
position guard closed, open
at rest loader lowered, guard closed
step raise "Raise the loader" loader lowered to raised takes 1 min back "Lower it"
step open-guard "Open the guard" guard closed to open takes 1 min back "Close it"
event refit "A wheel was refitted"
event wash "It was washed"
event bulletin "The maker has written" on 2026-03-20
`;

/** A part that a variant uses. */
const EXTRA = `part extra "Extra tasks"
  language 1
gauge lamp "Lamp gauge" reads V
task epsilon "Task epsilon"
  every 5 days
  only if lamp above 11 V
`;

/** The schedule that comes with the mower. */
export const MOWER = `schedule rotor-mower "Rotor mower"
  language 1
  for attachment
meter rotor "Rotor hours" counts h
meter out "Hours out" counts h from outings
task blades "Turn the blades"
  every 20 h of rotor or 40 days, whichever first
task knives "Look at the knives"
  every 6 h of out
task guards "Look at the guards"
  before each outing
`;

const whole = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });
const METERS = ['engine', 'engine', 'shaft', 'road', 'mowing', 'served', 'mower.rotor', 'mower.out'] as const;
const UNITS: Readonly<Record<string, string>> = { road: 'km', served: 'service-days' };
const unitOf = (meter: string): string => UNITS[meter] ?? 'h';

const onMeter = (min: number, max: number): fc.Arbitrary<string> =>
  fc.tuple(whole(min, max), fc.constantFrom(...METERS)).map(([n, meter]) => `${n} ${unitOf(meter)} of ${meter}`);
const calendar = fc.oneof(
  whole(1, 60).map((n) => `${n} days`),
  whole(1, 9).map((n) => `${n} weeks`),
  whole(1, 8).map((n) => `${n} months`),
  whole(1, 8).map((n) => `${n} calendar months`),
  fc.constant('1 years'),
  fc.constantFrom('12 months less 1 day', '1 months less 2 days', '3 calendar months less 1 day'),
  fc.constantFrom('1 months plus 15 days', '4 months plus 10 days', '2 calendar months plus 3 days'),
  fc.constantFrom(
    '1 calendar years',
    '1 calendar quarters',
    '2 calendar quarters',
    '1 calendar half-years',
    '1 calendar half-years less 5 days',
  ),
);
const work = fc.tuple(whole(1, 40), fc.constantFrom('', ' in dusty', ' in steep')).map(([n, duty]) => `${n * 15} min of work${duty}`);
const span = fc.oneof(onMeter(2, 120), calendar, work);
const mark = fc.constantFrom(
  'month on day 15, day 30',
  'month on day 31 where it exists',
  'month on day 31',
  'year on 1 April',
  'year on 1 March, 15 May',
  '2 years on 1 November',
  'year in April',
  'year in May',
  '2 years in March',
  '3 months on day 31',
  '2 months on day 1',
  'calendar month',
  'calendar quarter',
  'calendar year',
  'calendar half-year',
  'calendar year 2 times',
  'calendar quarter 3 times',
  'calendar month 2 times',
  'calendar half-year 4 times',
  'calendar week',
  'calendar week 2 times',
  'calendar week 2 times, 2 days apart',
  'calendar month 2 times, 10 days apart',
  'calendar quarter 3 times, 3 weeks apart',
  'Monday',
  'Monday and Thursday',
  'Saturday, Sunday',
  'year on 29 February',
  'year on 29 February where it exists',
  'month on the first Monday',
  'month on the second Tuesday and the last Friday',
  '3 months on the third Sunday, the fourth Monday',
  'year on the last Friday of March',
  '2 years on the first Monday of May, the last Sunday of February',
  '2 weeks on Monday from 2026-01-05',
  '3 weeks on Thursday and Sunday from 2025-10-09',
  '13 weeks on Wednesday from 2026-05-06',
);
const look = whole(2, 20).map((n) => `look in ${n * 10} h of engine from sign to failure finding 90 % missing 0.1 %`);
const still = fc
  .tuple(
    fc.constantFrom('20 days', '4 weeks', '2 months', '1 calendar months'),
    fc.constantFrom('', ' of 5 days or more', ' of 2 weeks or more', ' of 1 months or more'),
  )
  .map(([each, length]) => `${each}, not counting storage${length}`);
const often = fc.constantFrom(
  '60 days 2 times',
  '3 months 2 times, 20 days apart',
  '2 calendar months 3 times',
  '6 weeks 3 times, 1 calendar months apart',
  'more than 50 days 2 times, 1 weeks apart',
  '40 h of engine 2 times',
  '8 h of mowing 3 times, 2 days apart',
);
const term = fc.oneof(
  { weight: 6, arbitrary: span },
  { weight: 1, arbitrary: onMeter(5, 60).map((each) => `multiple of ${each}`) },
  { weight: 2, arbitrary: mark },
  { weight: 1, arbitrary: span.map((each) => `more than ${each}`) },
  { weight: 1, arbitrary: look },
  { weight: 1, arbitrary: still },
  { weight: 1, arbitrary: often },
  { weight: 1, arbitrary: fc.constantFrom('50 % of 8 months', '40 % of 50 h of engine', 'more than 25 % of 30 days') },
);
const mode = fc.constantFrom('first', 'last');
const plan = fc.oneof(
  { weight: 3, arbitrary: term },
  { weight: 2, arbitrary: fc.tuple(term, term, mode).map(([a, b, how]) => `${a} or ${b}, whichever ${how}`) },
  { weight: 1, arbitrary: fc.tuple(term, term, term, mode).map(([a, b, c, how]) => `${a} or ${b} or ${c}, whichever ${how}`) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(term, term, term, mode, mode)
      .map(([a, b, c, inner, outer]) => `${a} or (${b} or ${c}, whichever ${inner}), whichever ${outer}`),
  },
);

const fact = fc.oneof(
  fc.tuple(whole(60, 110), fc.constantFrom('above', 'below', 'at least', 'at most')).map(([value, how]) => `coolant ${how} ${value} °C`),
  fc.constantFrom(
    'coolant above normal',
    'coolant from 70 °C to 80 °C',
    'oil below low',
    'oil above full',
    'oil at most low',
    'hydraulic below low',
    'tyre below 200 kPa',
    'tyre at least 180 kPa',
    'belt below 5 mm',
    'coolant is high',
    'oil from low to full',
    'oil at least 0.5',
  ),
  fc.tuple(whole(5, 200), fc.constantFrom('engine', 'mowing', 'shaft')).map(([value, meter]) => `${meter} above ${value} h`),
  fc
    .tuple(whole(5, 200), fc.constantFrom('above', 'below', 'at least', 'at most'), fc.constantFrom('engine', 'mowing', 'mower.rotor'))
    .map(([value, how, meter]) => `${meter} ${how} ${value} h`),
  whole(1, 12).map((value) => `served at least ${value} service-days`),
  whole(5, 150).map((value) => `engine from ${value} h to ${value + 20} h`),
  fc.constantFrom(
    'coolant climbs 6 °C within 60 min',
    'coolant falls 5 °C within 90 min',
    'oil falls 0.4 L within 20 days',
    'tyre falls 20 kPa within 3 days',
  ),
  fc.constantFrom('oil read within 7 days', 'coolant read within 90 min', 'engine read within 5 days', 'tyre read within 20 h of engine'),
  fc.constantFrom(
    'beta done within 20 days',
    'delta done within 2 months',
    'gamma done within 10 h of engine',
    'delta done within 90 min of work',
  ),
  fc.constantFrom(
    'gamma done within 60 min',
    'refit happened within 45 min',
    'refit happened within 20 h of engine',
    'refit happened within 14 days',
    'bulletin happened within 14 days',
    'bulletin happened within 20 h of engine',
    'bulletin ever happened',
    'wash happened within 2 h of work',
    'wash happened within 1 months',
    'wash happened within 3 h of work in dusty',
    'wash happened within 2 calendar months',
    'refit happened 2 times within 14 days',
    'gamma done 3 times within 2 months',
    'wash ever happened',
    'delta ever done',
    'delta done 2 times within 20 h of engine',
    'wash happened 2 times within 3 h of work',
  ),
  fc.constantFrom(
    'seep is open',
    'seep worse than wetness',
    'seep is drops-form',
    'seep is closed',
    'crack is closed',
    'crack is open',
    'loader is raised',
    'guard is open',
    'mower is on',
    'mower is off',
    'fork is on',
    'in dusty',
    'in steep',
  ),
  fc.constantFrom(
    'machine older than 4 months',
    'machine older than 30 days',
    'machine older than 2 calendar months',
    'machine idle for 10 days',
    'machine idle for 1 months',
    'machine at work',
    'no outing since beta',
    'no outing since delta',
    'date from 1 March to 31 May',
    'date from 1 November to 15 February',
  ),
);
const condition = fc.oneof(
  { weight: 4, arbitrary: fact },
  { weight: 1, arbitrary: fc.tuple(fact, fact).map(([a, b]) => `${a} and ${b}`) },
  { weight: 1, arbitrary: fc.tuple(fact, fact).map(([a, b]) => `${a} or ${b}`) },
  { weight: 1, arbitrary: fact.map((each) => `not ${each}`) },
  { weight: 1, arbitrary: fc.tuple(fact, fact, fact).map(([a, b, c]) => `${a} and (${b} or not ${c})`) },
  { weight: 1, arbitrary: fc.tuple(fact, fact).map(([a, b]) => `not (${a} and ${b})`) },
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
  'after attaching fork',
  'on refuelling',
  'on each day of work',
  'within 3 h before each shift',
  'within 90 min before each outing',
  "within 20 h before each day's work",
  'on refit',
  'on wash',
  'on alpha',
  'on epsilon',
  'after 2 times refit',
  'after 3 times wash',
  'after 2 times alpha',
  'after 4 times epsilon',
);
/** What happens: events, and work that is done. */
const happening = fc.oneof(
  { weight: 2, arbitrary: fc.constantFrom('refit', 'wash', 'bulletin') },
  { weight: 1, arbitrary: fc.constantFrom('alpha', 'beta', 'delta', 'epsilon') },
);
const within = fc.tuple(span, happening).map(([each, event]) => `within ${each} after ${event}`);
const series = fc
  .tuple(
    fc.constantFrom(
      '1 h, 10 h, 50 h of engine',
      '2 days, 1 months',
      '60 min, 300 min of work',
      '5 h of engine',
      '10 days',
      '3 h, 9 h of mowing',
    ),
    happening,
  )
  .map(([each, event]) => `at ${each} after ${event}`);
const timing = fc.oneof(
  { weight: 5, arbitrary: plan.map((each) => `every ${each}`) },
  { weight: 1, arbitrary: whole(20, 120).map((n) => `every ${n} h of engine`) },
  { weight: 3, arbitrary: occasion },
  { weight: 2, arbitrary: condition.map((each) => `when ${each}`) },
  { weight: 2, arbitrary: fc.tuple(condition, plan).map(([what, each]) => `while ${what} every ${each}`) },
  { weight: 1, arbitrary: series },
  { weight: 1, arbitrary: within },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom('half', 'a third', 'a quarter', '40 % of'), fc.constantFrom('oil', 'hydraulic'))
      .map(([share, stick]) => `sooner at ${share} the time that ${stick} takes to fall to low`),
  },
);

const first = fc.oneof(
  { weight: 3, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: span.map((each) => `first at ${each}`) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      'first at 10 h, 30 h of engine',
      'first at 5 days, 20 days, 2 months',
      'first at 60 min, 240 min of work',
      'first at 20 h of engine or 30 days, whichever first',
      'first at 4 h of mowing or 10 days, whichever last',
      'first at 10 h, 30 h of engine after refit',
      'first at 5 days after wash',
      'first at 10 h, 25 h of engine after alpha',
      'first at 4 h of mowing after gamma',
      'first at 20 h of engine or 1 months, whichever first after wash',
    ),
  },
);
const margin = fc.oneof(
  whole(1, 60).map((n) => `${n} %`),
  fc.constantFrom(
    'lesser of 10 % and 5 h',
    'lesser of 20 % and 3 days',
    '4 h',
    '6 days',
    '1 months',
    '2 calendar months',
    '1 calendar quarters',
    '1 months plus 2 days',
    '1 months less 1 day',
    '1 calendar months less 3 days',
    '45 min of work',
  ),
  fc.constantFrom('lesser of lesser of 50 % and 8 h and 6 h', 'lesser of 30 % and 1 months'),
);
const extra = fc.oneof(
  { weight: 2, arbitrary: fc.constant('') },
  { weight: 2, arbitrary: fc.constantFrom('count from due if late', 'count from due within the allowance', 'count from doing') },
);
const allow = fc.oneof(
  { weight: 2, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: margin.map((each) => `allow ${each} late`) },
  { weight: 1, arbitrary: fc.tuple(margin, margin).map(([a, b]) => `allow ${a} early, ${b} late`) },
  { weight: 1, arbitrary: fc.constantFrom('allow 3 h early, 4 days early, 5 h late, 1 months late', 'allow 4 h late, 6 days late') },
);
const lead = fc.oneof(
  { weight: 3, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: margin.map((each) => `lead ${each}`) },
  { weight: 1, arbitrary: fc.constantFrom('lead 3 h, 5 days', 'lead 1 months, 2 h') },
);
const hold = fc.oneof(
  { weight: 3, arbitrary: fc.constant('') },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      'hold when overdue "Too late."',
      'hold 10 % late "Too late."',
      'hold 30 % late "Much too late."',
      'hold 3 h late "Late." hold 5 days late "Late too."',
      'hold 1 months late "Months late."',
    ),
  },
);
const gate = fc.oneof(
  { weight: 4, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: condition.map((each) => `only if ${each}`) },
  { weight: 1, arbitrary: condition.map((each) => `unless ${each}`) },
  { weight: 1, arbitrary: fc.constantFrom('for serial 1 to 50', 'for serial 51 to 999') },
);
const duty = fc.constantFrom(
  'in dusty every 20 h of engine',
  'in dusty every 12 h of engine',
  'in dusty every 20 h of engine\n  in steep every 10 h of engine',
  'in steep every 15 h of engine',
);

const reads = (next: string): fc.Arbitrary<string> =>
  fc.constantFrom(
    '',
    '',
    `reads oil\n    below low hold "Too low." then ${next} now\n    low to full fine\n    above full caution "Overfilled." then ${next} within 2 days`,
    `reads coolant\n    below 60 °C fine\n    60 °C to 97 °C fine\n    above 97 °C hold "Too hot." then ${next} within 5 h of engine`,
    `reads tyre\n    below 180 kPa caution "Soft." then ${next} within 60 min of work\n    from 180 kPa fine`,
    `reads hydraulic\n    below low hold "Low." then ${next} within 1 months\n    from low fine`,
  );

const TASKS = ['alpha', 'beta', 'gamma', 'delta'] as const;

function links(index: number): fc.Arbitrary<readonly string[]> {
  const later = TASKS.slice(index + 1);
  const all = [
    ...later.flatMap((next) => [`covers ${next}`, `restarts ${next}`, `follows ${next}`]),
    ...(index < 3 ? ['mends seep', 'mends crack'] : []),
    ...(index < 2 ? ['met by gamma, delta'] : []),
  ];
  return all.length === 0
    ? fc.constant([])
    : fc.oneof({ weight: 2, arbitrary: fc.constant([]) }, { weight: 2, arbitrary: fc.subarray(all, { minLength: 1, maxLength: 2 }) });
}

function task(index: number): fc.Arbitrary<string> {
  const name = TASKS[index] ?? 'alpha';
  const next = TASKS[index + 1];
  return fc
    .record({
      timings: fc.array(timing, { minLength: index === 3 ? 0 : 1, maxLength: 3 }),
      first,
      extra,
      allow,
      lead,
      hold,
      gate,
      duty,
      link: links(index),
      alone: fc.constantFrom(false, false, false, true),
      reads: next === undefined ? fc.constant('') : reads(next),
    })
    .map((parts) => {
      const every = parts.timings.some((each) => each.startsWith('every'));
      const clauses = [...(every || parts.alone ? [parts.first] : []), ...parts.timings];
      const limits = limitsIn(clauses);
      const dependence = parts.link.map((each) =>
        name === 'alpha' && each === 'covers beta' && parts.link.includes('met by gamma, delta') ? '' : each,
      );
      return [
        `task ${name} "Task ${name}"`,
        ...clauses,
        hasOneForDuty(clauses) && !clauses.some(isOften) ? parts.duty : '',
        countsSpans(parts.timings) && !clauses.some((each) => each.includes('not counting') || isOften(each)) ? parts.extra : '',
        ...[parts.hold, parts.allow, parts.lead].filter((each) => limits !== '' && suits(each, limits)),
        parts.gate,
        ...dependence,
        parts.reads,
      ]
        .filter((line) => line !== '')
        .join('\n  ');
    });
}

const seep = fc.constantFrom(
  'defect seep "Seep" classes wetness, drops-form, drops-fall\n  drops-fall hold "Drops fall."',
  'defect seep "Seep" classes wetness, drops-form, drops-fall\n  drops-form caution "Watch." then delta within 10 h of engine\n  drops-fall hold "Drops fall." then delta now',
  'defect seep "Seep" classes wetness, drops-form, drops-fall\n  wetness caution "Wet." then gamma within 7 days',
);
const stop = fc.oneof(
  { weight: 3, arbitrary: fc.constant('') },
  { weight: 1, arbitrary: condition.map((each) => `stop never-so "Not so" when ${each}`) },
);

const machine = fc
  .tuple(seep, stop, task(0), task(1), task(2), task(3))
  .map((parts) => `${MACHINE}defect crack "Crack in the frame"\n${parts.filter((part) => part !== '').join('\n')}\n`);

/** What a variant of the schedule changes. */
const changes = fc.oneof(
  fc.tuple(fc.constantFrom(...TASKS), plan).map(([name, each]) => `change task ${name}\n  every ${each}\n`),
  fc
    .tuple(fc.constantFrom(...TASKS), condition)
    .map(([name, each]) => `change task ${name} "Changed"\n  when ${each}\n  only if seep is open\n`),
  fc.constantFrom(...TASKS).map((name) => `remove task ${name}\n`),
);

/** A whole schedule with four tasks of its own; one in eight as a variant of another. Some do not pass the checker: the caller leaves those out. */
export const anySchedule: fc.Arbitrary<Files> = fc.oneof(
  { weight: 7, arbitrary: machine.map((text) => ({ 'tried.due': `schedule tried "Tried machine"${HEAD}${text}`, 'mower.due': MOWER })) },
  {
    weight: 1,
    arbitrary: fc.tuple(machine, changes).map(([text, changed]) => ({
      'tried.due': `variant tried "Tried variant"\n  varies "base.due"\n  use "extra.due"${HEAD}${changed}`,
      'base.due': `schedule base "Tried machine"${HEAD}${text}`,
      'extra.due': EXTRA,
      'mower.due': MOWER,
    })),
  },
);
