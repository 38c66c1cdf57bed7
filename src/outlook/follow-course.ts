import type { NodeId } from '../graph/rule-graph.js';
import type { Day } from '../values/moment.js';
import type { DueCourse } from './due-course.js';
import { FAR } from './due-days.js';
import type { Doings } from './due-days.js';
import { LEVEL, rankOf } from './forecast.js';
import type { DateRange } from './forecast.js';
import type { Sky } from './sky.js';

/** What becomes of one task along all futures. */
export interface Followed {
  /** Its first, second … round; as many as come in a tenth of the futures or more. */
  readonly rounds: readonly DateRange[];
  /** Rules that decide the first, with the share of futures in which each does; the likeliest first. */
  readonly decides: readonly { readonly node: NodeId; readonly share: number }[];
}

/**
 * How many rounds of one task are followed, where so many tasks are: each day of two years for seventy tasks, and never fewer than the weeks of two
 * years. A schedule of thousands of daily tasks would take for ever.
 */
export function mostRounds(tasks: number): number {
  return Math.max(105, Math.floor(52_000 / Math.max(1, tasks)));
}

/**
 * Follows a task along every future from one due day to the next, as if it were done on each; one round of all futures at a time.
 *
 * Takes time for the due days that there are, not for the days between them. The ranges come from counting days, without sorting.
 */
export function followCourse(course: DueCourse, sky: Sky, most: number): Followed {
  const { columns, now, to, count, tally } = sky;
  const [due, by] = [columns.lend().fill(FAR), columns.lend().fill(-1)];
  course.first(due, by);
  const decides = votesOf(by, course.rules);
  const doings: Doings = { count: 0, future: columns.lend(), day: columns.lend() };
  for (let f = 0; f < count; f += 1) {
    doings.future[f] = f;
    doings.day[f] = Math.max(now, due[f] ?? FAR);
  }
  doings.count = keepWithin(doings, count, to);
  const rounds: DateRange[] = [];
  const ranks = { early: rankOf((1 - LEVEL) / 2, count), likely: rankOf(0.5, count), late: rankOf((1 + LEVEL) / 2, count) };
  while (doings.count > ranks.early && rounds.length < most) {
    rounds.push(count === 1 ? rangeOfOne(sky, doings.day[0] as Day) : rangeOf(doings, tally, now, ranks));
    course.again(doings, due.fill(to + 1, 0, doings.count));
    for (let i = 0; i < doings.count; i += 1) doings.day[i] = Math.max((doings.day[i] ?? 0) + 1, due[i] ?? 0);
    doings.count = keepWithin(doings, doings.count, to);
  }
  for (const column of [due, by, doings.future, doings.day]) columns.giveBack(column);
  return { rounds, decides };
}

/** Moves the doings up to `to` to the front, and says how many they are. */
function keepWithin({ future, day }: Doings, count: number, to: number): number {
  let kept = 0;
  for (let i = 0; i < count; i += 1) {
    const at = day[i] ?? 0;
    // Written in any case, and counted if it holds: a branch that is guessed wrong would cost more.
    future[kept] = future[i] ?? 0;
    day[kept] = at;
    kept += Number(at <= to);
  }
  return kept;
}

/** Which futures, of all in the order of their days, tell the ends and the middle of a range. */
interface Ranks {
  readonly early: number;
  readonly likely: number;
  readonly late: number;
}

/**
 * The range of the days on which the task is done, all other futures counting as later.
 *
 * There are more doings than `ranks.early`. `tally` is lent empty and given back so. Only the days between the first doing and the last are looked at, which is one where no future differs.
 */
function rangeOf({ count, day }: Doings, tally: Int32Array, from: Day, ranks: Ranks): DateRange {
  let first = tally.length;
  let last = 0;
  for (let i = 0; i < count; i += 1) {
    const place = (day[i] ?? from) - from;
    tally[place] = (tally[place] ?? 0) + 1;
    first = Math.min(first, place);
    last = Math.max(last, place);
  }
  const range = {
    early: (from + placeOfRank(ranks.early, tally, first)) as Day,
    likely: ranks.likely < count ? ((from + placeOfRank(ranks.likely, tally, first)) as Day) : null,
    late: ranks.late < count ? ((from + placeOfRank(ranks.late, tally, first)) as Day) : null,
    level: LEVEL,
  };
  tally.fill(0, first, last + 1);
  return range;
}

/** What the calendar alone decides has one future. */
function rangeOfOne({ oneDay, now }: Sky, day: Day): DateRange {
  return (oneDay[day - now] ??= { early: day, likely: day, late: day, level: LEVEL });
}

/** The place, from `first` on, in which the future of a rank was counted. */
function placeOfRank(rank: number, tally: Int32Array, first: number): number {
  let place = first;
  let passed = tally[first] ?? 0;
  while (passed <= rank) passed += tally[(place += 1)] ?? 0;
  return place;
}

function votesOf(by: Int32Array, rules: readonly NodeId[]): Followed['decides'] {
  // Place 0 is for futures in which nothing decided.
  const votes = new Int32Array(rules.length + 1);
  for (let f = 0; f < by.length; f += 1) {
    const place = (by[f] ?? 0) + 1;
    votes[place] = (votes[place] ?? 0) + 1;
  }
  const cast = by.length - (votes[0] ?? 0);
  return rules
    .map((node, rule) => ({ node, share: (votes[rule + 1] ?? 0) / cast }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share || a.node - b.node);
}
