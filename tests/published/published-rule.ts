import { assess } from '../../src/assess/assess.js';
import type { Assessment, DuePoint, Intent, TaskAssessment } from '../../src/assess/assessment.js';
import { assertNever } from '../../src/base/assert-never.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import type { Entry } from '../../src/history/entry.js';
import { civilOf } from '../../src/values/civil.js';
import { unitsOf } from '../../src/values/ticks.js';
import { graphOfSchedule } from '../schedules/schedule-files.js';
import { moment } from '../support/history.js';

/** An entry that still wants its id. */
export type Item = (id: string) => Entry;

/** A published rule under schedules/published/, asked about one history. */
export interface PublishedRule {
  readonly graph: RuleGraph;
  /** The state of a task at a moment, with its due point: `clear 2008-07-01`, `due 1200`, `resting`. */
  readonly says: (told: readonly Item[], now: string, task: string, intent?: Intent) => string;
  /** The due points of all the limits that take part in a task. */
  readonly limits: (told: readonly Item[], now: string, task: string, intent?: Intent) => readonly string[];
  readonly verdict: (told: readonly Item[], now: string, intent?: Intent) => Assessment['verdict'];
}

/** Compiles schedules/published/`name`.due. */
export function publishedRule(name: string): PublishedRule {
  const graph = graphOfSchedule(`published/${name}.due`);
  const entries = (told: readonly Item[]): readonly Entry[] => told.map((item, index) => item(`e${index + 1}`));
  const ask = (told: readonly Item[], now: string, intent: Intent = {}): Assessment =>
    assess(graph, entries(told), moment(now), { intent });
  return {
    graph,
    says: (told, now, task, intent) => inShort(ask(told, now, intent).tasks.find((each) => each.task === task)),
    limits: (told, now, task, intent) =>
      (ask(told, now, intent).record[task] ?? []).flatMap(({ limit }) => (limit?.due == null ? [] : [pointInShort(limit.due)])),
    verdict: (told, now, intent) => ask(told, now, intent).verdict,
  };
}

/** A doing, with meter values where the rule counts on a meter. `when` is a date, or a date and a time. */
export function done(when: string, tasks: string | readonly string[], meters: Readonly<Record<string, number>> = {}): Item {
  return (id) => ({ id, ...at(when), kind: 'done', tasks: typeof tasks === 'string' ? [tasks] : [...tasks], meters });
}

/** A meter reading. */
export function reading(when: string, meters: Readonly<Record<string, number>>): Item {
  return (id) => ({ id, ...at(when), kind: 'reading', meters });
}

/** A gauge or dipstick reading. */
export function gauge(when: string, readings: Readonly<Record<string, number>>): Item {
  return (id) => ({ id, ...at(when), kind: 'reading', readings });
}

/** Something declared as an event. */
export function event(when: string, name: string): Item {
  return (id) => ({ id, ...at(when), kind: 'event', event: name });
}

/** The day on which it entered service. */
export function service(when: string): Item {
  return (id) => ({ id, ...at(when), kind: 'machine', inService: when.slice(0, 10) });
}

/** How parts of it stand from then on. */
export function stands(when: string, positions: Readonly<Record<string, string>>): Item {
  return (id) => ({ id, ...at(when), kind: 'stands', positions });
}

/** A defect found, of a class. */
export function defect(when: string, name: string, ofClass: string): Item {
  return (id) => ({ id, ...at(when), kind: 'defect-opened', defect: name, class: ofClass });
}

/** An outing of one day by the clock; `when` is its date and start. */
export function outing(when: string, until: string, ...duties: readonly string[]): Item {
  return (id) => ({ id, ...at(when), kind: 'outing', until, duties: duties.map((duty) => ({ duty })) });
}

function at(when: string): { readonly on: string; readonly at?: string } {
  const [on = '', time] = when.split(' ');
  return { on, ...(time === undefined ? {} : { at: time }) };
}

function inShort(task: TaskAssessment | undefined): string {
  if (task === undefined) return 'no such task';
  return task.due === null ? task.state : `${task.state} ${pointInShort(task.due)}`;
}

function pointInShort(due: DuePoint): string {
  switch (due.on) {
    case 'meter':
    case 'work':
      return String(unitsOf(due.ticks));
    case 'calendar':
      return iso(due.day);
    case 'moment':
      return iso(due.at.day);
    default:
      return assertNever(due);
  }
}

function iso(day: Parameters<typeof civilOf>[0]): string {
  const { year, month, day: ofMonth } = civilOf(day);
  return [year, String(month).padStart(2, '0'), String(ofMonth).padStart(2, '0')].join('-');
}

/** Storage begins or ends. */
export function storage(when: string, phase: 'begins' | 'ends'): Item {
  return (id) => ({ id, ...at(when), kind: 'storage', phase });
}
