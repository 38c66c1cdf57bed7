/**
 * What the time ahead brings: for each task when it will fall due, as a range, and which of its rules will decide.
 */
import type { Assessment, TaskAssessment, TaskState } from '../assess/assessment.js';
import { comesFirst } from '../assess/verdict.js';
import type { NodeId, RuleGraph } from '../graph/rule-graph.js';
import type { Timeline } from '../history/timeline.js';
import { addDays } from '../values/calendar.js';
import type { Day } from '../values/moment.js';
import { dueCourse } from './due-course.js';
import type { DueCourse } from './due-course.js';
import { NEVER } from './due-days.js';
import type { BringForward } from './due-days.js';
import { followCourse, mostRounds } from './follow-course.js';
import type { DateRange } from './forecast.js';
import { nextDue } from './next-due.js';
import { asFewFutures, skyOver } from './sky.js';
import type { Sky } from './sky.js';
import { useFutures } from './use-futures.js';
import type { FuturesByMeter, UseFutures } from './use-futures.js';

/** Why there is, or is no, range. */
export type Foreseen =
  /** From simulated use. */
  | 'simulated'
  /** By the calendar alone: the range is one day. */
  | 'calendar'
  /** It is due already, overdue, or nothing is on record of it. */
  | 'now'
  /** It comes with work, a reading, an event: no date can be told. */
  | 'no-date'
  /** Its limit counts on meters whose use is not known; the rest of its rules may still say by when at the latest. */
  | 'use-unknown'
  /** It does not apply now, or what it depends on is unknown. */
  | 'resting'
  | 'unknown';

/** What the time ahead brings for one task. */
export interface TaskAhead {
  readonly task: string;
  readonly state: TaskState;
  readonly foreseen: Foreseen;
  /**
   * `null` where no date can be told, or it lies beyond what was looked at. Where use is not known: from today to the day on which the other rules
   * make it due in any case.
   */
  readonly next: DateRange | null;
  /** Rules that decide the next date, with the share of futures in which each does; the likeliest first. */
  readonly decides: readonly { readonly node: NodeId; readonly share: number }[];
  /** When it comes round again, if it is done each time it falls due. */
  readonly later: readonly DateRange[];
  /** Meters that parts of its limits count on and whose use is not known: those parts are left out. */
  readonly unforeseen: readonly string[];
  /** Days with a reading, of the meter that has the fewest; 0 where no meter bears on it. `fromOutings`: days with an outing, from which that meter counts. */
  readonly n: number;
  readonly fromOutings?: true;
  /** The last reading that it starts from (of the meter that was not read the longest); what was due since then shows as due today. */
  readonly readUntil: Day | null;
  readonly method: string;
}

/** The time looked at, and all tasks. */
export interface YearAhead {
  readonly from: Day;
  readonly to: Day;
  /** In the order of the schedule. */
  readonly tasks: readonly TaskAhead[];
}

/** How far to look, along how many futures. */
export interface AheadOptions {
  /** Default 365. */
  readonly days?: number;
  /** Simulated futures; default 1000. */
  readonly count?: number;
  readonly seed?: number;
}

/**
 * Follows every task through simulated futures of use, from its assessment.
 *
 * It takes it that each task is done on the day on which it falls due. What comes with work, readings or events has no date and says so.
 *
 * @param assessment of now, with its record.
 */
export function yearAhead(graph: RuleGraph, timeline: Timeline, assessment: Assessment, options: AheadOptions = {}): YearAhead {
  const { days = 365 } = options;
  const from = assessment.now.day;
  const futures = futuresOf(graph, timeline, from, options);
  return { from, to: addDays(from, days), tasks: tasksAhead(graph, assessment, futures, addDays(from, days)) };
}

/** Meter → futures of its use that reach `days` beyond now; meters whose use is not known are missing. */
export function futuresOf(graph: Pick<RuleGraph, 'meters'>, timeline: Timeline, now: Day, options: AheadOptions = {}): FuturesByMeter {
  const { days = 365, count = 1000, seed = 1 } = options;
  const counted = new Set(graph.meters.filter(({ fromOutings }) => fromOutings).map(({ id }) => id));
  return new Map(
    [...timeline.meters].flatMap(([meter, track]): readonly (readonly [string, UseFutures])[] => {
      const since = now - (track.points.at(-1)?.when.day ?? now);
      // One seed for all: the meters of one machine run together.
      const futures = useFutures(track, { count, seed, days: days + since, ...(counted.has(meter) ? { outingsUntil: now } : {}) });
      return futures === null ? [] : [[meter, futures]];
    }),
  );
}

/** As {@link yearAhead}, along futures that are there already. */
export function tasksAhead(graph: RuleGraph, assessment: Assessment, futures: FuturesByMeter, to: Day): readonly TaskAhead[] {
  const triggers = new Map(graph.tasks.map(({ id, trigger }) => [id, trigger]));
  const sky = skyOver(futures, assessment.now.day, to);
  const most = mostRounds(assessment.tasks.length);
  return assessment.tasks.map((assessed) => {
    const trigger = triggers.get(assessed.task);
    const record = assessment.record[assessed.task] ?? [];
    if (comesFirst(assessed.state)) {
      const again = asFewFutures(sky, (under) => (trigger === undefined ? NEVER : nextDue(graph.nodes, trigger, record, under)));
      return dueNow(assessed, again.made, again.along, most);
    }
    const course = asFewFutures(sky, (under) => (trigger === undefined ? null : dueCourse(graph.nodes, trigger, record, under)));
    return taskAhead(assessed, course.made, course.along, most);
  });
}

/** Due today, and after that as its rules say once it is done today. */
function dueNow({ task, state }: TaskAssessment, again: BringForward, sky: Sky, most: number): TaskAhead {
  const today = { early: sky.now, likely: sky.now, late: sky.now, level: 1 };
  const dueToday: DueCourse = { first: (due) => void due.fill(sky.now), again, rules: [], meters: [], unforeseen: [] };
  const later = followCourse(dueToday, sky, most).rounds.slice(1);
  return { task, state, foreseen: 'now', next: today, decides: [], later, unforeseen: [], n: 0, readUntil: null, method: 'as assessed' };
}

function taskAhead(assessed: TaskAssessment, course: DueCourse | null, sky: Sky, most: number): TaskAhead {
  const { task, state } = assessed;
  const foreseen = foreseenOf(state, course);
  const none = {
    task,
    state,
    foreseen,
    next: null,
    decides: [],
    later: [],
    unforeseen: course?.unforeseen ?? [],
    n: 0,
    readUntil: null,
    method: 'none',
  };
  if (course === null || (foreseen !== 'simulated' && foreseen !== 'calendar' && foreseen !== 'use-unknown')) return none;
  const { rounds, decides } = followCourse(course, sky, most);
  const next = rounds[0] ?? null;
  const used = course.meters.flatMap((meter) => sky.futures.get(meter) ?? []);
  const fewest = used.reduce<UseFutures | undefined>(
    (least, one) => (least !== undefined && least.readings <= one.readings ? least : one),
    undefined,
  );
  return {
    ...none,
    next: next && { ...next, ...(foreseen === 'simulated' ? {} : { level: 1 }), ...(foreseen === 'use-unknown' ? { early: sky.now } : {}) },
    decides,
    later: rounds.slice(1),
    n: fewest?.readings ?? 0,
    ...(fewest?.fromOutings === undefined ? {} : { fromOutings: fewest.fromOutings }),
    readUntil: used.length === 0 ? null : (Math.min(...used.map(({ start }) => start)) as Day),
    method: used[0]?.method ?? 'by the calendar',
  };
}

function foreseenOf(state: TaskState, course: DueCourse | null): Foreseen {
  if (state === 'resting' || state === 'unknown') return state;
  if (course === null) return 'no-date';
  if (course.meters.length > 0) return 'simulated';
  return course.unforeseen.length > 0 ? 'use-unknown' : 'calendar';
}
