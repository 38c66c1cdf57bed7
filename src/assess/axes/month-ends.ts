import { addAmount, marginAfter, marginBefore } from '../../graph/calendar-amount.js';
import type { DaySpans } from './day-axis.js';

/** Spans and margins of every kind, those that run to the end of a month and those with days less or more among them. */
export const everyDaySpan: DaySpans = { add: addAmount, before: marginBefore, after: marginAfter };
