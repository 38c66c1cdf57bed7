/**
 * What is said beside a limit that asks for so many doings: how many there are, and which of them came too soon to count.
 */
import type { TooSoon } from '../assess/assessment.js';
import type { RuleFacts } from '../explain/explanation.js';
import { dayAfter } from '../graph/calendar-amount.js';
import type { CalendarAmount } from '../graph/rule-graph.js';
import type { Moment } from '../values/moment.js';
import { calendarInWords } from './amounts-in-words.js';
import { counted, timesInWords } from './count-in-words.js';
import { dayInWords } from './dates-in-words.js';

/** Doings that came too soon which are told one by one; of more, the last are. */
const MOST_TOLD = 3;

/** Sentences without their full stops; none for a limit that asks for one doing. */
export function doingsSentences(rule: RuleFacts, now: Moment): readonly string[] {
  const { node, note } = rule;
  if (note?.is !== 'times-done' && note?.is !== 'doings-counted') return [];
  const apart = node.kind === 'interval' || node.kind === 'calendar-marks' ? node.apart : undefined;
  return [...howMany(rule), ...(apart === undefined ? [] : tooSoonSentences(note.tooSoon ?? [], apart, now))];
}

/** Of a span only where there are too few: which it counts from says the rest. */
function howMany({ note, limit }: RuleFacts): readonly string[] {
  if (note?.is === 'times-done') return [timesDone(note.done, note.of), ...missedMarks(note.missed)];
  if (note?.is !== 'doings-counted' || note.counted.length >= note.of || limit === undefined) return [];
  return [timesDone(note.counted.length, note.of)];
}

function timesDone(done: number, of: number): string {
  return `${done === 0 ? 'none' : done} of the ${counted(of, 'time')} that it asks for ${done === 1 ? 'is' : 'are'} on record`;
}

function missedMarks(missed: number): readonly string[] {
  return missed === 0 ? [] : [`${counted(missed, 'earlier mark')} passed without enough, and only the latest counts`];
}

function tooSoonSentences(all: readonly TooSoon[], apart: CalendarAmount, now: Moment): readonly string[] {
  const told = all.slice(-MOST_TOLD);
  const untold = all.length - told.length;
  const last = told.at(-1);
  if (last === undefined) return [];
  const again = dayAfter(last.after.day, apart);
  return [
    ...told.map((each) => tooSoonSentence(each, apart)),
    ...(untold === 0 ? [] : [`before that it was done too soon ${timesInWords(untold)} more`]),
    ...(again > now.day ? [`it counts again from ${dayInWords(again)} on`] : []),
  ];
}

/** `the doing of 3 October 2025 does not count: it came 32 days after that of 1 September 2025, and they have to be 120 days apart`. */
function tooSoonSentence({ when, after }: TooSoon, apart: CalendarAmount): string {
  const days = when.day - after.day;
  const came = days === 0 ? 'on the same day as another' : `${counted(days, 'day')} after that of ${dayInWords(after.day)}`;
  return `the doing of ${dayInWords(when.day)} does not count: it came ${came}, and they have to be ${calendarInWords(apart)} apart`;
}
