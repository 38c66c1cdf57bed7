/**
 * Work that the hours are drawn with: services that come round, each with the days on which it was done and whether that was in time.
 */
import type { Outlook, TaskAhead } from '../../../ahead.js';
import type { Entry, RuleGraph } from '../../../engine.js';
import type { Day } from '../../../values/moment.js';
import { serviceRecord } from '../../exchange/service-record.js';
import type { RecordedWork } from '../../exchange/service-record.js';

/** One service and its doings, oldest first. */
export interface Service {
  readonly task: string;
  readonly title: string;
  readonly done: readonly { readonly day: Day; readonly timing: RecordedWork['timing']['is'] }[];
  /** The likeliest day of the next, where there is one within the time looked at. */
  readonly next: Day | null;
}

/** Rows that a page has room for. */
const MOST = 16;
/** What is done more often than this, in days, would be a row of blots. */
const CLOSEST = 21;

/**
 * Services that take supplies and come round by a limit, in the order of the schedule. What is done every week or two is left out; of more than
 * there is room for, the rarest stay, for the frequent ones are the least worth looking up.
 */
export function servicesOf(graph: RuleGraph, entries: readonly Entry[], { now, tasks }: Outlook): readonly Service[] {
  const services = new Set(graph.tasks.filter(({ uses }) => uses.length > 0).map(({ id }) => id));
  const work = serviceRecord([{ from: null, graph }], entries, now, (task) => services.has(task)).work.filter(
    ({ voided }) => voided === null,
  );
  const found = graph.tasks.flatMap(({ id, title, uses }): readonly Service[] => {
    const ahead = tasks.find(({ task }) => task === id);
    if (ahead === undefined || uses.length === 0 || !hasLimit(ahead)) return [];
    const done = work.filter(({ task }) => task === id).map(({ when, timing }) => ({ day: when.day, timing: timing.is }));
    const span = (done.at(-1)?.day ?? 0) - (done[0]?.day ?? 0);
    return done.length === 0 || (span / done.length < CLOSEST && done.length > 2)
      ? []
      : [{ task: id, title, done, next: ahead.next?.likely ?? null }];
  });
  const rarest = [...found].sort((a, b) => a.done.length - b.done.length).slice(0, MOST);
  return found.filter((service) => rarest.includes(service));
}

function hasLimit({ foreseen }: TaskAhead): boolean {
  return foreseen !== 'no-date' && foreseen !== 'resting';
}
