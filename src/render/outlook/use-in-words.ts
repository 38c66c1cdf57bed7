/**
 * Rate of use, loss of fluids and repairs that come again, each with what stands behind it.
 */
import { assertNever } from '../../base/assert-never.js';
import type { DefectAhead, FluidAhead, Loss, MeterAhead } from '../../outlook/outlook.js';
import type { RepairTrend } from '../../outlook/repair-trend.js';
import { monthName } from '../../values/calendar.js';
import type { Day } from '../../values/moment.js';
import { numberText } from '../../values/number-text.js';
import { unitsOf } from '../../values/ticks.js';
import type { Titles } from '../amounts-in-words.js';
import { listed } from '../../base/listed.js';
import { counted } from '../count-in-words.js';
import { dayInWords } from '../dates-in-words.js';
import { safeText } from '../safe-text.js';
import { likelyInWords, numberAndRange, rangeInWords } from './range-in-words.js';

/** What the record of a meter has to have before its use is followed ahead (src/outlook/use-futures.ts). */
export const ENOUGH_READ = 'four days with a reading, or an outing, over a week or more';

/** Meter, rate, season, data. */
export function meterRow({ meter, rate, fromOutings }: MeterAhead, names: Titles): readonly string[] {
  const { title, unit } = names.meters[meter] ?? { title: meter, unit: 'h' };
  if (rate === null) return [safeText(title), `not known: too few ${fromOutings ? 'outings' : 'readings'}`, '', ''];
  const weekly = (ticks: number): number => unitsOf(ticks * 7);
  const range = rate.range === null ? null : { low: weekly(rate.range.low), high: weekly(rate.range.high) };
  return [
    safeText(title),
    `${numberAndRange(weekly(rate.value), range, 1)} ${safeText(unit)} a week`,
    busyMonths(rate),
    `${daysNoted(rate.n, fromOutings)}, up to ${dayInWords(rate.until)}`,
  ];
}

/** What the use of a meter rests on: `4 days with a reading`, `1 day with an outing`. */
export function daysNoted(n: number, fromOutings: true | undefined): string {
  return `${counted(n, 'day')} with ${fromOutings ? 'an outing' : 'a reading'}`;
}

/** A month counts as busy from this many times the average on. */
const BUSY = 1.5;

function busyMonths({ seasons }: NonNullable<MeterAhead['rate']>): string {
  if (seasons === null) return 'seasons not known yet: less than a year';
  const busy = seasons.filter(({ factor }) => factor >= BUSY).map(({ month }) => monthName(month) ?? '');
  return busy.length === 0 ? 'much the same all year' : `busiest in ${listed(busy)}`;
}

/** Dipstick, loss, when low, data. */
export function fluidRow({ dipstick, loss }: FluidAhead, names: Titles, to: Day): readonly string[] {
  const title = safeText(names.dipsticks[dipstick]?.title ?? dipstick);
  if (loss === null) return [title, 'no loss seen, or too few levels', '', ''];
  const { litresPerHour } = loss;
  const range = litresPerHour.range === null ? null : { low: litresPerHour.range.low * 100, high: litresPerHour.range.high * 100 };
  return [
    title,
    `${numberAndRange(litresPerHour.value * 100, range)} L in 100 h`,
    lowInWords(loss, to),
    `${counted(litresPerHour.n, 'run')} between levels, ${counted(loss.topUps, 'top-up')}`,
  ];
}

/** How long what is there lasts, and about when it stands at the low mark. */
function lowInWords({ litresLeft, hoursToLow, low, litresPerHour }: Loss, to: Day): string {
  const hours = `${numberText(litresLeft)} L above low at the last look: ${numberAndRange(hoursToLow.value, hoursToLow.range, 0)} h`;
  if (litresPerHour.range === null) return `${hours}; too few levels for a date`;
  if (low === null) return `${hours}; not low before ${dayInWords(to)}`;
  const likely = likelyInWords(low, to);
  return `${hours}; low ${rangeInWords(low, to)}${likely === '' ? '' : `, ${likely}`}`;
}

/** Defect, how often, whether it gets worse, data. */
export function defectRow({ defect, found, open, trend }: DefectAhead, names: Titles): readonly string[] {
  return [
    safeText(names.defects[defect] ?? defect),
    `found ${found === 1 ? 'once' : counted(found, 'time')}${open ? ', open now' : ''}`,
    trendInWords(trend),
    trend.chance === null ? '' : `${counted(trend.n, 'time')} counted; by chance ${numberText(trend.chance * 100, 0)} times in 100`,
  ];
}

function trendInWords({ says, growth }: RepairTrend): string {
  const between = growth === null ? '' : `; now one in ${numberText(growth.between, 0)} h`;
  switch (says) {
    case 'getting-worse':
      return `comes faster and faster${between}`;
    case 'getting-better':
      return `comes more seldom${between}`;
    case 'no-trend-seen':
      return `no trend seen${between}`;
    case 'too-few':
      return 'too few to say whether it comes faster';
    default:
      return assertNever(says);
  }
}
