import type { SpanNode } from '../../syntax/tree.js';
import { calendarAmountOf } from './amount.js';
import { problem, type Read } from './read.js';

/** The minutes of a span that only the clock can tell: how long before a start something may be done. Days have no hour, so they are refused. */
export function clockMinutesOf(span: SpanNode): Read<number> {
  if (span.of !== undefined) return byTheClock(span, 'and is not counted `of` anything', 'Write it in min or h.');
  const amount = calendarAmountOf(span);
  if ('problem' in amount) return amount;
  const { unit, count } = amount.value;
  if (unit === 'minutes') return { value: count };
  return byTheClock(
    span,
    'and days have no hour',
    unit === 'days' ? `Write it in min or h: \`${count * 24} h\`.` : 'Write it in min or h.',
  );
}

function byTheClock({ at }: SpanNode, why: string, help: string): Read<number> {
  return problem('wrongUnit', { at, message: `How long before the start is told by the clock, ${why}.`, help });
}
