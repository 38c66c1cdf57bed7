import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { ByWeekNode, LimitNode } from '../../syntax/tree.js';
import { addDays, weekdayName, weekdayOf } from '../../values/calendar.js';
import { formatDate, parseDate } from '../../values/civil.js';
import type { Rule } from '../context.js';
import { DAYS_IN_WEEK } from '../limits.js';
import { diagnostic, rewrite } from '../report.js';

/** A calendar-marks limit that goes by the week. */
interface ByWeek {
  readonly limit: Extract<LimitNode, { kind: 'calendar-marks' }>;
  readonly byWeek: ByWeekNode;
}

/** Which day of the week it is can be told from the calendar alone. */
export const weekdayUnclear: Rule = {
  codes: ['weekdayUnclear'],
  scope: 'declaration',
  check: ({ nodes }) =>
    nodes.all<ByWeek['limit']>('calendar-marks').flatMap((limit) => {
      const { byWeek } = limit;
      if (byWeek === undefined) return [];
      switch (limit.unit.text) {
        case 'week':
        case 'weeks':
          return inWeeks({ limit, byWeek });
        case 'month':
        case 'months':
          return inMonths(byWeek);
        case 'year':
        case 'years':
          return inYears(byWeek);
        default:
          return [
            unclear(limit.unit.at, `A day of the week comes every so many weeks, months or years, not every so many ${limit.unit.text}.`),
          ];
      }
    }),
};

function inWeeks({ limit, byWeek }: ByWeek): readonly Diagnostic[] {
  const { days, from } = byWeek;
  const named = days.map(({ weekday }) => nameOf(weekday.weekday));
  const placed = days.find(({ nth }) => nth !== undefined);
  if (placed !== undefined)
    return [
      unclear(
        placed.at,
        `A week has one ${nameOf(placed.weekday.weekday)}.`,
        'Months and years have a first and a last: `month on the first Monday`.',
      ),
    ];
  if (limit.number?.value === 1)
    return [
      diagnostic('weekdayUnclear', {
        at: limit.at,
        message: 'In each week it is the day alone.',
        fixes: [rewrite('sure', limit.at, named.join(' and '))],
      }),
    ];
  if (from === undefined)
    return [
      unclear(
        byWeek.at,
        `Nobody can tell in which of the weeks it is.`,
        `Say the first day of all: \`${limit.number?.text ?? '2'} weeks on ${named.join(' and ')} from\` and its date. Counted from when it was done it is \`${limit.number?.text ?? '2'} weeks\`, on whatever day.`,
      ),
    ];
  return firstDay(byWeek, from);
}

/** The first day of all is one of those that are named. */
function firstDay({ days }: ByWeekNode, { at, text }: NonNullable<ByWeekNode['from']>): readonly Diagnostic[] {
  const read = parseDate(text);
  if (read.kind !== 'date') return [];
  if (read.day < 1) return [unclear(at, 'Weeks are counted from a day after 1970-01-01.')];
  const isNamed = (ahead: number): boolean => days.some(({ weekday }) => weekday.weekday === weekdayOf(addDays(read.day, ahead)));
  const ahead = Array.from({ length: DAYS_IN_WEEK }, (_, each) => each).find(isNamed) ?? 0;
  if (ahead === 0) return [];
  const next = formatDate(addDays(read.day, ahead));
  return [
    diagnostic('weekdayUnclear', {
      at,
      message: `${text} is a ${nameOf(weekdayOf(read.day))}, and the first day of all has to be one of those that are named.`,
      fixes: [rewrite('possible', at, next)],
    }),
  ];
}

function inMonths({ days }: ByWeekNode): readonly Diagnostic[] {
  return days.flatMap(({ at, nth, weekday, month }) => {
    if (nth === undefined) return [whichOne(at, weekday.weekday, '')];
    return month === undefined
      ? []
      : [unclear(month.at, 'Each month has its own.', 'Once a year it is `year on the last Friday of March`.')];
  });
}

function inYears({ days }: ByWeekNode): readonly Diagnostic[] {
  return days.flatMap(({ at, nth, weekday, month }) => {
    if (nth === undefined) return [whichOne(at, weekday.weekday, ' of March')];
    return month === undefined
      ? [unclear(at, 'Nobody can tell of which month.', 'Write it with its month: `the last Friday of March`.')]
      : [];
  });
}

function whichOne(at: Diagnostic['at'], weekday: number, of: string): Diagnostic {
  return unclear(at, `There is more than one ${nameOf(weekday)}.`, `Say which: \`the first ${nameOf(weekday)}${of}\`.`);
}

function unclear(at: Diagnostic['at'], message: string, help?: string): Diagnostic {
  return diagnostic('weekdayUnclear', { at, message, ...(help === undefined ? {} : { help }) });
}

function nameOf(weekday: number): string {
  return weekdayName(weekday) ?? '';
}
