import { attachments } from './sets/attachments.js';
import { beats } from './sets/beats.js';
import { calendarMonths } from './sets/calendar-months.js';
import { calendar } from './sets/calendar.js';
import { fixedDates } from './sets/fixed-dates.js';
import { conditions } from './sets/conditions.js';
import { consumption } from './sets/consumption.js';
import { corrections } from './sets/corrections.js';
import { defects } from './sets/defects.js';
import { duties } from './sets/duties.js';
import { followUps } from './sets/follow-ups.js';
import { happenings } from './sets/happenings.js';
import { hardStops } from './sets/hard-stops.js';
import { links } from './sets/links.js';
import { whicheverLast } from './sets/whichever-last.js';
import { serialNumbers } from './sets/serial-numbers.js';
import { mergedLogbooks } from './sets/merged-logbooks.js';
import { intervals } from './sets/intervals.js';
import { meterMarks } from './sets/meter-marks.js';
import { minutes } from './sets/minutes.js';
import { occasions } from './sets/occasions.js';
import { positions } from './sets/positions.js';
import { readings } from './sets/readings.js';
import { recency } from './sets/recency.js';
import { replacedMeters } from './sets/replaced-meters.js';
import { seasons } from './sets/seasons.js';
import { stagedServices } from './sets/staged-services.js';
import { severalTimes } from './sets/several-times.js';
import { standstill } from './sets/standstill.js';
import { statements } from './sets/statements.js';
import { storedTime } from './sets/stored-time.js';
import { suggestions } from './sets/suggestions.js';
import { trends } from './sets/trends.js';
import { weekdayMarks } from './sets/weekday-marks.js';
import { wholes } from './sets/wholes.js';
import { windows } from './sets/windows.js';
import { workTime } from './sets/work-time.js';

/** Every set of kinds there is, by its name. Between them they have every kind; a test holds them to that. */
export const kindSets = {
  intervals,
  whicheverLast,
  beats,
  calendar,
  calendarMonths,
  minutes,
  workTime,
  stagedServices,
  meterMarks,
  fixedDates,
  duties,
  occasions,
  weekdayMarks,
  windows,
  happenings,
  attachments,
  conditions,
  seasons,
  standstill,
  readings,
  trends,
  recency,
  positions,
  defects,
  followUps,
  consumption,
  wholes,
  links,
  serialNumbers,
  hardStops,
  corrections,
  mergedLogbooks,
  statements,
  storedTime,
  severalTimes,
  replacedMeters,
  suggestions,
} as const;

/** What a set of kinds is called where it is imported. */
export type KindSetName = keyof typeof kindSets;
