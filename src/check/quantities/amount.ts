/**
 * Spans as amounts on an axis: a meter, time at work, or the calendar.
 *
 * Meter and work amounts are whole ticks, 1/36000 of the unit, so hours, minutes and seconds are exact. Weeks are 7 days, years 12 months;
 * hours that are meant for the calendar (`fresh for 12 h`) are minutes. A span without `of` in hours counts on the only hour meter that is
 * read, if there is just one; likewise in the unit of any other meter.
 */
import type { Amount, CalendarAmount, MeterAmount } from '../../graph/rule-graph.js';
import type { NumberNode, PercentNode, SpanNode } from '../../syntax/tree.js';
import { calendarUnit, findUnit, type Unit } from '../../values/units.js';
import { isDefinitionOf, type DefinitionOf, type Home, type Model } from '../model.js';
import { rewrite } from '../report.js';
import { kindName } from '../words.js';
import { problem, type Read } from './read.js';
import { ticksIn, unitOf, wrongUnit } from './units.js';

const calendarHelp = 'Write it in min, h, days, weeks, months or years.';

/** The amount that a span means where any axis will do. Undefined where its meter is a name that nobody declared: that is said elsewhere. */
export function amountOf(model: Model, home: Home, span: SpanNode): Read<Amount> | undefined {
  const unit = sizedUnit(span);
  if ('problem' in unit) return timesOfWork(model, span) ?? unit;
  const { of } = span;
  if (of === undefined) return withoutOf(model, home, span, unit.value);
  if (of.kind === 'work') return workAmount(span, unit.value, of.duty === undefined ? undefined : model.meaning.get(of.duty)?.id);
  const meter = model.meaning.get(of.name);
  return meter !== undefined && isDefinitionOf(meter, 'meter') ? meterAmount(span, unit.value, meter) : undefined;
}

/** `every 3 clean-element`: work that was named where a unit stands. */
function timesOfWork(model: Model, { number, unit }: SpanNode): Read<Amount> | undefined {
  const named = model.definitions.find(({ kind, name }) => (kind === 'task' || kind === 'event') && name === unit.text);
  if (named === undefined) return undefined;
  return problem('unknownUnit', {
    at: unit.at,
    message: `\`${unit.text}\` is ${kindName(named.kind)} and no unit.`,
    labels: [{ at: named.at, text: 'declared here' }],
    help: `What comes round with it is a clause of its own: \`after ${number.text} times ${unit.text}\`.`,
  });
}

/** The amount that a span means where only the calendar makes sense: freshness, age, a trend's window. */
export function calendarAmountOf(span: SpanNode): Read<CalendarAmount> {
  const unit = sizedUnit(span);
  if ('problem' in unit) return unit;
  if (span.of !== undefined) {
    const message = 'A span of calendar time is wanted here, which is not counted `of` anything.';
    return problem('wrongUnit', { at: span.at, message, help: calendarHelp });
  }
  if (unit.value.dimension === 'time') return minutes(span, unit.value);
  return calendarAmount(span, unit.value) ?? wrongUnit(span.unit, unit.value, { wanted: 'a span of calendar time', help: calendarHelp });
}

/** Whether an amount is hours: of a meter that counts hours, or of time at work. */
export function isHours(model: Model, amount: Amount): boolean {
  return amount.on === 'work' || (amount.on === 'meter' && meterUnit(model, amount.meter) === 'h');
}

/** The unit that a meter counts, as the table of units spells it. */
export function meterUnit(model: Model, id: string): string | undefined {
  const meter = model.meters.find((each) => each.id === id);
  return meter === undefined ? undefined : (findUnit(meter.node.unit.text)?.symbol ?? meter.node.unit.text);
}

function meterAmount(span: SpanNode, unit: Unit, meter: DefinitionOf<'meter'>): Read<MeterAmount> | undefined {
  const counts = findUnit(meter.node.unit.text);
  if (counts === null) return undefined;
  const ticks = ticksOf(span, unit, counts);
  if (ticks !== null) return { value: { on: 'meter', meter: meter.id, ticks } };
  const labels = [{ at: meter.node.unit.at, text: `\`${meter.name}\` counts ${counts.symbol}` }];
  const help = `Write it in ${counts.symbol}, or leave out \`of ${meter.name}\`.`;
  return wrongUnit(span.unit, unit, { wanted: `an amount in ${counts.symbol}`, labels, help });
}

function workAmount(span: SpanNode, unit: Unit, duty: string | undefined): Read<Amount> {
  const hours = findUnit('h');
  const ticks = hours === null ? null : ticksOf(span, unit, hours);
  if (ticks === null) return wrongUnit(span.unit, unit, { wanted: 'a time at work', help: 'Write it in h, min or s.' });
  return { value: { on: 'work', ...(duty === undefined ? {} : { duty }), ticks } };
}

function withoutOf(model: Model, home: Home, span: SpanNode, unit: Unit): Read<Amount> | undefined {
  const calendar = calendarAmount(span, unit);
  if (calendar !== undefined) return calendar;
  const meters = metersThatCount(model, home, unit);
  const [only, ...others] = meters.filter(({ node }) => !node.fromOutings);
  if (only !== undefined && others.length === 0 && findUnit(only.node.unit.text) === unit) return meterAmount(span, unit, only);
  if (meters.length > 0 || unit.dimension === 'time') return unclear(span, unit, meters);
  const help = 'Write it in days, weeks, months or years, or in what a meter counts: `100 h of engine`.';
  return wrongUnit(span.unit, unit, { wanted: 'a span', help });
}

function unclear(span: SpanNode, unit: Unit, meters: readonly DefinitionOf<'meter'>[]): Read<Amount> {
  const written = `${span.number.text} ${span.unit.text}`;
  const choices = [...meters.map(({ id }) => `${written} of ${id}`), ...(unit.dimension === 'time' ? [`${written} of work`] : [])];
  const help = `Say what it counts on: ${choices.map((choice) => `\`${choice}\``).join(' or ')}.`;
  const fixes = choices.map((choice) => rewrite('possible', span.at, choice));
  return problem('unclearMeter', { at: span.at, message: `\`${written}\` does not say on what it counts.`, help, fixes });
}

/** Meters at this home that count what a unit measures; those of the host where this home has none. */
function metersThatCount(model: Model, home: Home, unit: Unit): readonly DefinitionOf<'meter'>[] {
  for (let scope: Home | undefined = home; scope !== undefined; scope = scope.host) {
    const prefix = scope.prefix;
    const here = model.meters.filter(
      (meter) => meter.home.prefix === prefix && findUnit(meter.node.unit.text)?.dimension === unit.dimension,
    );
    if (here.length > 0) return here;
  }
  return [];
}

function minutes(span: SpanNode, unit: Unit): Read<CalendarAmount> {
  const count = Math.round(span.number.value * unit.factor * 60);
  if (count > 0) return { value: { on: 'calendar', unit: 'minutes', count } };
  return problem('fractionalSpan', {
    at: span.at,
    message: 'This is shorter than a minute, the shortest calendar time there is.',
    help: 'Write at least `1 min`.',
  });
}

/** Ticks of a span, or of its share. */
function ticksOf({ number, share }: SpanNode, unit: Unit, counts: Unit): number | null {
  const ticks = ticksIn(number, unit, counts);
  return ticks === null || share === undefined ? ticks : shareOf(ticks, share);
}

/** A share of whole ticks or days, rounded down. Percentages may have decimals, and a binary fraction must not lose a whole one. */
function shareOf(whole: number, { number }: PercentNode): number {
  return Math.floor((whole * Math.round(number.value * 1000)) / 100_000);
}

/** The days that a span is written to fall short by, or to have besides. */
export function writtenDays({ less, plus }: SpanNode): Pick<CalendarAmount, 'less' | 'plus'> {
  if (less !== undefined && less.value !== 0) return { less: less.value };
  return plus === undefined || plus.value === 0 ? {} : { plus: plus.value };
}

function calendarAmount(span: SpanNode, unit: Unit): Read<CalendarAmount> | undefined {
  const found = calendarUnit(unit);
  if (found === null) return undefined;
  const { number, share } = span;
  const whole = number.value * found.count;
  const exact = share === undefined ? whole : (whole * Math.round(share.number.value * 1000)) / 100_000;
  const count = found.unit === 'days' ? (share === undefined ? exact : Math.floor(exact)) : exact;
  // Half of a calendar quarter ends with no period.
  const isWhole = Number.isInteger(count) && count > 0 && (found.period === undefined || count % found.period === 0);
  if (isWhole) return { value: { on: 'calendar', ...found, count, ...writtenDays(span) } };
  if (share !== undefined) return unevenShare(share, number, unit);
  return found.unit === 'months' ? partOfMonth(span, unit, exact) : brokenUp(span, unit, found.unit === 'days' ? 'days' : unit.symbol);
}

/** `7.5 months`: the half is said in days. */
function partOfMonth(span: SpanNode, unit: Unit, months: number): Read<CalendarAmount> {
  const whole = Math.floor(months);
  const days = Math.round((months - whole) * 30);
  if (whole < 1 || days < 1 || days > 27 || span.less !== undefined || span.plus !== undefined) return brokenUp(span, unit, 'months');
  const text = `${whole} ${whole === 1 ? 'month' : 'months'} plus ${days} ${days === 1 ? 'day' : 'days'}`;
  const at = { ...span.number.at, end: span.unit.at.end };
  return problem('fractionalSpan', {
    at: span.number.at,
    message: `\`${span.number.text} ${unit.symbol}\` is not a whole number of months.`,
    help: `Write the part of a month in days: \`${text}\`.`,
    fixes: [rewrite('possible', at, text)],
  });
}

function brokenUp({ number }: SpanNode, unit: Unit, parts: string): Read<CalendarAmount> {
  return problem('fractionalSpan', {
    at: number.at,
    message: `\`${number.text} ${unit.symbol}\` is not a whole number of ${parts}.`,
    help: parts === 'months' ? 'Write a whole number of months, or write it in days.' : `Write a whole number of ${parts}.`,
  });
}

function unevenShare({ number: percent, at }: PercentNode, number: NumberNode, unit: Unit): Read<CalendarAmount> {
  const message = `${percent.text} % of ${number.text} ${unit.symbol} does not come to whole ${unit.symbol === 'days' || unit.symbol === 'weeks' ? 'days' : 'months'}.`;
  return problem('fractionalSpan', { at, message, help: 'Write what it comes to, in days or in months.' });
}

/** What is wrong with the share of a span, or with what it falls short by; undefined where nothing is. */
function oddPart(span: SpanNode): ReturnType<typeof problem> | undefined {
  const { share } = span;
  if (share === undefined || (share.number.value > 0 && share.number.value <= 100)) return shortfallOf(span);
  const message = `${share.number.text} % of a span makes no sense.`;
  return problem('impossibleNumber', { at: share.at, message, help: 'Write a percentage above 0, and 100 at most.' });
}

/** What is wrong with `less` or `plus` some days; undefined where nothing is. */
export function shortfallOf({ less, plus, number, unit }: SpanNode): ReturnType<typeof problem> | undefined {
  const found = findUnit(unit.text);
  const days = less ?? plus;
  if (days === undefined || found === null) return undefined;
  const whole = calendarUnit(found);
  const isMonths = whole !== null && whole.unit !== 'days';
  if (isMonths && days.value >= 1 && days.value <= 27) return undefined;
  const [word, short] = less === undefined ? ['plus', 'over'] : ['less', 'short'];
  const message = isMonths
    ? `A span cannot be ${days.text} days ${short}.`
    : `Only a span in months or years is written \`${word}\` some days.`;
  const left = less === undefined ? 'Write what it comes to in one.' : `Write what is left: \`${number.text} ${unit.text}\`, or fewer.`;
  return problem('impossibleNumber', { at: days.at, message, help: isMonths ? 'Write 1 to 27 days.' : left });
}

function sizedUnit(span: SpanNode): Read<Unit> {
  const { number } = span;
  if (!(number.value > 0)) {
    const message = `A span has to be more than nothing, and \`${number.text} ${span.unit.text}\` is not.`;
    return problem('emptySpan', { at: number.at, message, help: 'Write how much: `100 h of engine`, `6 months`.' });
  }
  if (number.value > 1e8)
    return problem('impossibleNumber', { at: number.at, message: `\`${number.text}\` is more than a machine will ever count.` });
  return oddPart(span) ?? unitOf(span.unit);
}

/** The amount of a delay after something happened. Minutes and seconds without `of` are the clock's, for no meter is read that often. */
export function delayOf(model: Model, home: Home, span: SpanNode): Read<Amount> | undefined {
  const unit = findUnit(span.unit.text);
  const short = unit !== null && unit.dimension === 'time' && unit.symbol !== 'h';
  return short && span.of === undefined ? calendarAmountOf(span) : amountOf(model, home, span);
}
