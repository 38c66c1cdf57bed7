import { everyFact } from '../history/every-fact.js';
import { dayAxis } from './axes/day-axis.js';
import { everyDaySpan } from './axes/month-ends.js';
import { meterAxis } from './axes/meter-axis.js';
import { minuteAxis } from './axes/minute-axis.js';
import { workAxis } from './axes/work-axis.js';
import { age, idle, season } from './conditions/calendar.js';
import { compare } from './conditions/compare.js';
import { and, not, or } from './conditions/logic.js';
import { recent } from './conditions/recent.js';
import { attachmentIs, defectIs, dutyIs, positionIs } from './conditions/standing.js';
import { trend } from './conditions/trend.js';
import { atWork, unworked } from './conditions/work.js';
import { defectHolds } from './defect-holds.js';
import { withEnds } from './ended-spells.js';
import type { Aspects, Axes, Conditions, Kinds, Triggers } from './kinds.js';
import { daysByWeek } from '../graph/days-by-week.js';
import { baseOnTheBeat } from './on-the-beat.js';
import { baseOfSeveral } from './often-done.js';
import { stoodStill } from './stored-time.js';
import { hardStops } from './hard-stops.js';
import { heldBy } from './held-by.js';
import { coveringDoings, restartingDoings } from './linked-doings.js';
import { lastOf } from './triggers/last-of.js';
import { behindGate } from './behind-gate.js';
import { ofAttachment } from './of-attachment.js';
import { ofSerials } from './of-serials.js';
import { withReadings } from './reading-holds.js';
import { stopHolds } from './stop-holds.js';
import { statedDoings } from './stated-doings.js';
import { asked } from './triggers/asked.js';
import { calendarMarks, calendarWindow } from './triggers/calendar-marks.js';
import { dutyMix } from './triggers/duty-mix.js';
import { first } from './triggers/first.js';
import { attaching, event, refuelling } from './triggers/happening.js';
import { interval } from './triggers/interval.js';
import { marks } from './triggers/marks.js';
import { occasion } from './triggers/occasion.js';
import { shortlyBefore } from './triggers/shortly-before.js';
import { sooner } from './triggers/sooner.js';
import { stages } from './triggers/stages.js';
import { when } from './triggers/when.js';
import { whichever } from './triggers/whichever.js';
import { whileHolds } from './triggers/while.js';
import { doingsByParts, withWholes } from './whole-by-parts.js';

const triggers: Triggers = {
  interval,
  'duty-mix': dutyMix,
  stages,
  first,
  marks,
  'calendar-marks': calendarMarks,
  'calendar-window': calendarWindow,
  whichever,
  any: whichever,
  occasion,
  'shortly-before': shortlyBefore,
  attaching,
  refuelling,
  event,
  when,
  while: whileHolds,
  asked,
  sooner,
};

const conditions: Conditions = {
  and,
  or,
  not,
  'position-is': positionIs,
  'attachment-is': attachmentIs,
  'defect-is': defectIs,
  'duty-is': dutyIs,
  compare,
  trend,
  recent,
  age,
  idle,
  unworked,
  'at-work': atWork,
  season,
};

const axes: Axes = { meter: meterAxis, work: workAxis, days: dayAxis, minutes: minuteAxis };

const aspects: Aspects = {
  serial: ofSerials,
  attachment: ofAttachment,
  gate: behindGate,
  'calendar-months': everyDaySpan,
  reads: withReadings,
  stated: statedDoings,
  beat: baseOnTheBeat,
  standstill: stoodStill,
  often: baseOfSeveral,
  covers: coveringDoings,
  restarts: restartingDoings,
  hold: hardStops,
  held: heldBy,
  last: lastOf,
  weeks: daysByWeek,
  placed: daysByWeek,
  stops: stopHolds,
  openDefects: defectHolds,
  ends: withEnds,
  metBy: { doings: doingsByParts, record: withWholes },
};

/**
 * Every kind that there is. The types of its tables are whole, so that a kind which the schema of graphs has and nobody judges does not
 * compile. It says nothing of entries, because with every fact there is none that it could not read.
 */
export const everyKind: Omit<Kinds, 'entries'> = { triggers, conditions, axes, aspects, facts: everyFact };
