/** Conditions on the calendar: the machine's age, how long it has stood idle, the season. */
import type { AgeNode, IdleNode, MonthDay, SeasonNode } from '../../graph/rule-graph.js';
import { civilOf, dayNumber, daysInMonth } from '../../values/civil.js';
import { type Day, type Moment, onDay } from '../../values/moment.js';
import { dayAfter } from '../../graph/calendar-amount.js';
import { type Finding, found, unknown } from '../finding.js';
import { outingOver, workOn } from '../occasions.js';
import type { World } from '../world.js';

/** Older than a span: true from the day after the birthday on. Unknown without a date of service. */
export function age(world: World, node: AgeNode): Finding {
  const { inService, entry } = world.timeline.machine;
  if (inService === null || entry === null) return unknown({ what: 'in-service' });
  const birthday = dayAfter(inService, node.span);
  const isOlder = world.now.day > birthday;
  return found(isOlder, onDay(isOlder ? nextDay(birthday) : inService), [entry]);
}

/** No outing has ended for at least a span, and none is under way. Counts from the start of service where there was none yet. */
export function idle(world: World, node: IdleNode): Finding {
  const work = workOn(world, 'outing');
  if (work?.outing != null) return found(false, work.outing.when, [work.outing.entry]);
  const last = outingOver(world, 'work');
  const { machine } = world.timeline;
  const since: Moment | null = last?.end ?? (machine.inService === null ? null : onDay(machine.inService));
  const entry = last?.entry ?? machine.entry;
  if (since === null || entry === null) return unknown({ what: 'outing' });
  const from = dayAfter(since.day, node.span);
  const isIdle = world.now.day >= from;
  return found(isIdle, isIdle ? onDay(from) : since, [entry]);
}

/** Between two days of the year, both included; may run over the new year. */
export function season(world: World, node: SeasonNode): Finding {
  const { year, month, day } = civilOf(world.now.day);
  const today = month * 100 + day;
  const [from, to] = [node.from.month * 100 + node.from.day, node.to.month * 100 + node.to.day];
  const inside = from <= to ? today >= from && today <= to : today >= from || today <= to;
  const [begins, ends] = [inside && today < from ? year - 1 : year, today > to ? year : year - 1];
  return found(inside, onDay(inside ? dayIn(begins, node.from) : nextDay(dayIn(ends, node.to))), []);
}

function nextDay(day: Day): Day {
  return (day + 1) as Day;
}

function dayIn(year: number, { month, day }: MonthDay): Day {
  return dayNumber({ year, month, day: Math.min(day, daysInMonth(year, month)) });
}
