/**
 * What the judge looks at: a rule graph, the entries that count, now and the intent. Everything is read anew each time it is asked for.
 */
import { isDeepStrictEqual } from 'node:util';
import type { Entry } from '../../src/history/entry.js';
import type { Condition, RuleGraph, Task, Trigger } from '../../src/graph/rule-graph.js';
import { after, dayFrom, type When } from './calendar.js';
import { rememberedOf } from './remembered.js';

/** What is wanted of the machine next. */
export interface Wanted {
  readonly outing?: {
    readonly start?: number;
    readonly hours?: number;
    readonly duties?: readonly string[];
    readonly attachments?: readonly string[];
    readonly shift?: string;
  };
  readonly storage?: boolean;
}

export interface World {
  readonly graph: RuleGraph;
  /** In force at now: neither voided nor dated after it. Voids and confirmations are among them for what they note besides. */
  readonly entries: readonly Entry[];
  readonly now: When;
  readonly wanted: Wanted;
}

/** When an entry happened. */
export const whenOf = rememberedOf((entry: Entry): When => ({
  day: dayFrom(entry.on),
  minute: entry.at === undefined ? null : minuteOf(entry.at),
}));

/** `08:30` as the minute of the day. */
export function minuteOf(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
}

/** §1: the same entry twice is one; of different ones under one id none counts. */
function oneOfEach(history: readonly Entry[]): readonly Entry[] {
  return history.filter((entry, i) => {
    const namesakes = history.filter(({ id }) => id === entry.id);
    return namesakes.every((other) => isDeepStrictEqual(other, entry)) && history.findIndex(({ id }) => id === entry.id) === i;
  });
}

/** The entries that count at now, without those that were taken back. */
export function worldOf(graph: RuleGraph, history: readonly Entry[], now: When, wanted: Wanted): World {
  const counting = oneOfEach(history).filter((entry) => !after(whenOf(entry), now));
  const standing = counting.filter((entry) => !takenBack(counting, entry.id, []));
  return { graph, entries: standing, now, wanted };
}

/** Whether a void that stands names the entry; of voids that run in a circle none stands. */
function takenBack(all: readonly Entry[], id: string, above: readonly string[]): boolean {
  const namers = all.filter((entry) => entry.kind === 'void' && entry.entry === id);
  return namers.some((namer) => !above.includes(namer.id) && !inCircle(all, namer.id) && !takenBack(all, namer.id, [...above, namer.id]));
}

/** Whether following what voids name leads back to where it began. */
function inCircle(all: readonly Entry[], id: string): boolean {
  const seen: string[] = [];
  let at: string | undefined = id;
  while (at !== undefined && !seen.includes(at)) {
    const here: string = at;
    seen.push(here);
    const found = all.find((entry) => entry.id === here);
    at = found?.kind === 'void' ? found.entry : undefined;
  }
  return at === id;
}

export function taskNamed(world: World, id: string): Task {
  const found = world.graph.tasks.find((task) => task.id === id);
  if (found === undefined) throw new Error(`no task ${id}`);
  return found;
}

const CONDITIONS = [
  'and',
  'or',
  'not',
  'position-is',
  'attachment-is',
  'defect-is',
  'duty-is',
  'compare',
  'trend',
  'recent',
  'age',
  'idle',
  'unworked',
  'at-work',
  'season',
];

/** The node as a condition. */
export function conditionAt(world: World, id: number): Condition {
  const node = world.graph.nodes[id];
  if (node === undefined || !CONDITIONS.includes(node.kind)) throw new Error(`node ${id} is no condition`);
  return node as Condition;
}

/** The node as a trigger. */
export function triggerAt(world: World, id: number): Trigger {
  const node = world.graph.nodes[id];
  if (node === undefined || CONDITIONS.includes(node.kind)) throw new Error(`node ${id} is no trigger`);
  return node as Trigger;
}
