import { dayAxis } from '../axes/day-axis.js';
import type { KindSet } from '../kinds.js';
import { calendarMarks, calendarWindow } from '../triggers/calendar-marks.js';

/** Fixed days of a month or year; within a named month. */
export const fixedDates: KindSet = {
  triggers: { 'calendar-marks': calendarMarks, 'calendar-window': calendarWindow },
  axes: { days: dayAxis },
};
