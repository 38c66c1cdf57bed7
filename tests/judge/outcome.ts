/** What a clause of a task comes to, and how clauses are put together (§4 "whichever", §8). */
import type { When } from './calendar.js';

export type State = 'overdue' | 'due' | 'unrecorded' | 'unknown' | 'coming-up' | 'clear' | 'resting';

/** Where a limit falls due. Meter points are life totals; all amounts are in ticks. */
export type Due =
  | { readonly on: 'meter'; readonly meter: string; readonly ticks: number }
  | { readonly on: 'calendar'; readonly day: number; readonly goodThrough: boolean }
  | { readonly on: 'moment'; readonly at: When }
  | { readonly on: 'work'; readonly duty: string | null; readonly ticks: number };

export interface Outcome {
  readonly state: State;
  readonly due: Due | null;
  /** The node that decided. */
  readonly node: number | null;
  readonly reachedAt: When | null;
  /** The share of the span that is used. */
  readonly used: number | null;
  /** Hard stops that hold the machine, or could for all that is known. */
  readonly stops: readonly ('true' | 'unknown')[];
}

export function plain(state: State, node: number, more: Partial<Outcome> = {}): Outcome {
  return { state, due: null, node, reachedAt: null, used: null, stops: [], ...more };
}

const FIRST: readonly State[] = ['overdue', 'due', 'unrecorded', 'unknown', 'coming-up', 'clear', 'resting'];
const LAST: readonly State[] = ['clear', 'coming-up', 'unknown', 'unrecorded', 'due', 'overdue'];

export function reached(state: State): boolean {
  return state === 'due' || state === 'overdue';
}

/** Any of the parts decides. */
export function whicheverFirst(parts: readonly Outcome[]): Outcome {
  const state = FIRST.find((each) => parts.some((part) => part.state === each)) ?? 'clear';
  const governing = pick(
    parts.filter((part) => part.state === state),
    1,
  );
  return { ...governing, state, stops: parts.flatMap(({ stops }) => stops) };
}

/** All of the parts must agree; a hard stop holds once all of them are beyond theirs. */
export function whicheverLast(parts: readonly Outcome[]): Outcome {
  const state = LAST.find((each) => parts.some((part) => part.state === each)) ?? 'clear';
  const governing = pick(
    parts.filter((part) => part.state === state),
    -1,
  );
  if (parts.some(({ stops }) => stops.length === 0)) return { ...governing, state, stops: [] };
  const sure = parts.every(({ stops }) => stops.includes('true'));
  return { ...governing, state, stops: [sure ? 'true' : 'unknown'] };
}

/** The part that decides: reached first (last, for -1); else due first on the calendar, if all are on it; else most used. Ties: as written. */
function pick(parts: readonly Outcome[], sign: 1 | -1): Outcome {
  const key = parts.every(({ state }) => reached(state))
    ? whenReached
    : parts.every((part) => part.used === null || dayDue(part) !== null)
      ? whenDue
      : unused;
  const [first, ...others] = parts;
  if (first === undefined) throw new Error('nothing to choose from');
  return others.reduce((best, part) => (sign * (key(part) - key(best)) < 0 ? part : best), first);
}

const NEVER = Number.MAX_SAFE_INTEGER;

function whenReached({ reachedAt }: Outcome): number {
  return reachedAt === null ? NEVER : reachedAt.day * 1440 + (reachedAt.minute ?? 0);
}

function dayDue({ due }: Outcome): number | null {
  return due?.on === 'calendar' ? due.day : due?.on === 'moment' ? due.at.day + (due.at.minute ?? 0) / 1440 : null;
}

function whenDue(part: Outcome): number {
  return part.used === null ? NEVER : (dayDue(part) ?? NEVER);
}

function unused({ used }: Outcome): number {
  return used === null ? NEVER : -used;
}
