/** Which margins a random task can have: those that belong to one of its limits and are shorter than it. Others the checker refuses. */

type Axis = 'hours' | 'days' | 'work';

/** What a span counts on, and about how long it is there; a share of a limit goes with any. */
function measured(text: string): readonly (readonly [Axis, number])[] {
  const work = [...text.matchAll(/(\d+) min of work/g)].map(([, n]): readonly [Axis, number] => ['work', Number(n) / 60]);
  const hours = [...text.matchAll(/(\d+) h(?: of (\w+))?/g)]
    .filter(([, , of]) => of !== 'work')
    .map(([, n]): readonly [Axis, number] => ['hours', Number(n)]);
  const days = [...text.matchAll(/(\d+) (day|week|month|year|calendar (?:month|quarter|half-year|year))s/g)].map(
    ([, n, unit]): readonly [Axis, number] => ['days', Number(n) * (DAYS[unit ?? 'day'] ?? 1)],
  );
  const marks = [...text.matchAll(/\b(?:(?:month|year)s? (?:on|in)|calendar (?:month|quarter|half-year|year))\b/g)].map(
    (): readonly [Axis, number] => ['days', 12],
  );
  const weekdays = [...text.matchAll(/[A-Z]\w+day\b|calendar week\b/g)].map((): readonly [Axis, number] => ['days', 7]);
  return [...work, ...hours, ...days, ...marks, ...weekdays];
}

const DAYS: Readonly<Record<string, number>> = {
  day: 1,
  week: 7,
  month: 28,
  year: 365,
  'calendar month': 28,
  'calendar quarter': 84,
  'calendar half-year': 168,
  'calendar year': 365,
};

/** Whether each margin of a clause belongs to one of the limits, and is shorter than all of those. */
export function suits(clause: string, limits: string): boolean {
  const all = measured(limits);
  const margins = clause.split(/,|\bhold\b/).filter((each) => /\d/.test(each));
  return margins.every((margin) => {
    const own = measured(margin);
    if (own.length === 0) return all.length > 0;
    return own.every(([axis, size]) => {
      const there = all.filter(([other]) => other === axis);
      return there.length > 0 && there.every(([, span]) => size < span);
    });
  });
}

/** The limits in a task's clauses: what stands after `every`, and series. */
export function limitsIn(clauses: readonly string[]): string {
  return clauses
    .filter((each) => /^(every|while|at|within|first)/.test(each))
    .map((each) => (each.startsWith('while') ? each.slice(each.lastIndexOf(' every ')) : each))
    .map((each) => each.replace(/ after \w+$/, ''))
    .join('\n');
}

/** Whether some `every` counts a span, and not marks only: that is what `count from` is for. */
export function countsSpans(clauses: readonly string[]): boolean {
  const plans = clauses.filter((each) => /^(every|while)/.test(each)).map((each) => each.slice(each.lastIndexOf('every ') + 6));
  return plans
    .flatMap((plan) => plan.split(/ or |\(|,/))
    .some((term) =>
      /^(more than |look in )?\d+ (h|km|min|days|weeks|months|years|calendar (?:month|quarter|half-year|year)s)\b(?! (on|in))/.test(
        term.trim(),
      ),
    );
}

/** Whether a clause asks for so many times within a span. */
export function isOften(clause: string): boolean {
  return /(?<!calendar [a-z-]+) \d+ times/.test(clause.replace(/happened \d+ times|done \d+ times/g, ''));
}

/** Whether there is one ordinary interval in hours of the engine that a duty could shorten. */
export function hasOneForDuty(clauses: readonly string[]): boolean {
  const plans = clauses.filter((each) => each.startsWith('every')).join(' or ');
  const all = [...plans.matchAll(/(more than |multiple of |look in )?\d+ h of engine/g)];
  return all.length === 1 && all[0]?.[1] === undefined;
}
