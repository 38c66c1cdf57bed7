import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { DateNode, MarkDayNode, TimeNode } from '../../syntax/tree.js';
import { monthName } from '../../values/calendar.js';
import { daysInMonth, parseDate } from '../../values/civil.js';
import type { Rule } from '../context.js';
import { diagnostic, rewrite } from '../report.js';

/** Dates, days of a month and times of day exist. 29 February does, for some years have one. */
export const impossibleDate: Rule = {
  codes: ['impossibleDate'],
  scope: 'declaration',
  check: ({ nodes }) => [
    ...nodes.all<DateNode>('date').flatMap(date),
    ...nodes.all<MarkDayNode>('mark-day').flatMap(markDay),
    ...nodes.all<TimeNode>('time').flatMap(time),
  ],
};

function date({ at, text }: DateNode): readonly Diagnostic[] {
  const parsed = parseDate(text);
  if (parsed.kind === 'date') return [];
  if (parsed.kind === 'not-a-date' || parsed.lastDay === null) {
    return [
      diagnostic('impossibleDate', { at, message: `There is no date ${text}.`, help: 'Dates are written year-month-day: 2026-02-14.' }),
    ];
  }
  const last = `${text.slice(0, 8)}${parsed.lastDay}`;
  return [
    diagnostic('impossibleDate', {
      at,
      message: `There is no date ${text}.`,
      help: `That month ends on ${last}.`,
      fixes: [rewrite('possible', at, last)],
    }),
  ];
}

function markDay({ at, day, month }: MarkDayNode): readonly Diagnostic[] {
  const longest = month === undefined ? 31 : daysInMonth(2024, month.month);
  if (Number.isInteger(day.value) && day.value >= 1 && day.value <= longest) return [];
  const where = month === undefined ? 'a month' : (monthName(month.month) ?? 'that month');
  return [
    diagnostic('impossibleDate', {
      at,
      message: `There is no day ${day.text} in ${where}.`,
      help: `The last is ${longest}.`,
      fixes: [rewrite('possible', day.at, String(longest))],
    }),
  ];
}

function time({ at, text }: TimeNode): readonly Diagnostic[] {
  const [hours, minutes] = text.split(':').map(Number);
  if (hours !== undefined && minutes !== undefined && hours <= 23 && minutes <= 59) return [];
  return [diagnostic('impossibleDate', { at, message: `There is no time of day ${text}.`, help: 'The day runs from 00:00 to 23:59.' })];
}
