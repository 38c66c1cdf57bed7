import type { DuePoint } from '../assess/assessment.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import { assertNever } from '../base/assert-never.js';
import { formatDate } from '../values/civil.js';
import { durationText, numberText } from '../values/number-text.js';
import { unitsOf } from '../values/ticks.js';
import { clockTime } from './dates-in-words.js';

/** A due point as a worked example writes it: `engine 1300 h`, `2027-05-13`. */
export function pointText(point: DuePoint, { meters }: Pick<RuleGraph, 'meters'>): string {
  switch (point.on) {
    case 'meter':
      return `${point.meter} ${numberText(unitsOf(point.ticks), 4)} ${meters.find(({ id }) => id === point.meter)?.unit ?? 'h'}`;
    case 'calendar':
      return formatDate(point.day);
    case 'moment':
      return `${formatDate(point.at.day)}${point.at.minute === null ? '' : ` ${clockTime(point.at.minute)}`}`;
    case 'work':
      return `after ${durationText(point.ticks)} of work${point.duty === null ? '' : ` in ${point.duty}`}`;
    default:
      return assertNever(point);
  }
}
