import type { SpanNode } from '../../syntax/tree.js';
import { calendarAmountOf } from './amount.js';
import { problem, type Read } from './read.js';

/** The minutes of a span that only the clock can tell: how long before a start something may be done. Days have no hour, so they are refused. */
export function clockMinutesOf(span: SpanNode): Read<number> {
  const amount = calendarAmountOf(span);
  if ('problem' in amount) return amount;
  if (amount.value.unit === 'minutes') return { value: amount.value.count };
  const days = amount.value.unit === 'days' ? amount.value.count : null;
  return problem('wrongUnit', {
    at: span.at,
    message: 'How long before the start is told by the clock, and days have no hour.',
    help: days === null ? 'Write it in min or h.' : `Write it in min or h: \`${days * 24} h\`.`,
  });
}
