/**
 * Events and defects that would bring a task up.
 */
import type { Trigger } from '../graph/rule-graph.js';
import type { TriggerState } from '../assess/reach.js';
import type { Change } from './change.js';
import { truthUnder } from './condition-if.js';
import type { RuleFacts } from './explanation.js';
import { reachesInto } from './influence.js';
import type { Ground } from './ground.js';
import { ANYTHING, certain, exactly } from './possible.js';
import type { Possible } from './possible.js';
import { taskStateIf, type WhatIf } from './what-if.js';

type Happening =
  { readonly is: 'event'; readonly event: string } | { readonly is: 'defect'; readonly defect: string; readonly class: string };

/** In the order of the rules; none on a day on which the task was done, when it could not be told which came first. */
export function addHappeningChanges(ground: Ground, rule: RuleFacts, changes: Change[]): void {
  if (ground.standing.doneToday) return;
  const happening = happeningAt(ground, rule);
  const becomes = happening === null ? null : certain(taskStateIf(ground, ifHappened, happening));
  if (happening !== null && becomes !== null && becomes !== ground.state) changes.push(changeBy(happening, becomes));
  for (const part of rule.parts) addHappeningChanges(ground, part, changes);
}

function changeBy(happening: Happening, becomes: Change['becomes']): Change {
  return happening.is === 'event'
    ? { change: 'happens', event: happening.event, becomes }
    : { change: 'opens', defect: happening.defect, class: happening.class, becomes };
}

/** What would bring up a rule at once. */
function happeningAt({ schedule }: Ground, { node, note }: RuleFacts): Happening | null {
  if (node.kind === 'event' && node.within === undefined) {
    // Nobody notes what is the doing of another task, or happens on a day of its own.
    return schedule.noted.has(node.event) ? { is: 'event', event: node.event } : null;
  }
  const closed = note?.is === 'not-asked' && note.defect?.closed !== null;
  return node.kind === 'asked' && node.by.is === 'defect' && node.within === undefined && closed ? node.by : null;
}

const ifHappened: WhatIf<Happening> = { leaf: leafIf, truth: truthUnder };

function leafIf(rule: RuleFacts, _: Ground, happening: Happening): Possible {
  const node = rule.node as Trigger;
  if (concerns(node, happening)) return isAtOnce(node) && matches(node, happening) ? exactly(onceMore(rule)) : ANYTHING;
  if (reachesInto(rule, happening)) return ANYTHING;
  return rule.state === undefined ? ANYTHING : exactly(rule.state);
}

/** What comes after so many times is due with the last of them, and coming up when one is wanting. */
function onceMore({ note }: RuleFacts): TriggerState {
  const wanting = note?.is === 'happened-times' ? note.of - note.times - 1 : 0;
  return wanting <= 0 ? 'due' : wanting === 1 ? 'coming-up' : 'clear';
}

function concerns(node: Trigger, happening: Happening): boolean {
  if (happening.is === 'defect') return node.kind === 'asked' && node.by.is === 'defect' && node.by.defect === happening.defect;
  return (
    (node.kind === 'event' && node.event === happening.event) ||
    (node.kind === 'stages' && node.from.is === 'event' && node.from.event === happening.event)
  );
}

function isAtOnce(node: Trigger): boolean {
  return (node.kind === 'event' || node.kind === 'asked') && node.within === undefined;
}

function matches(node: Trigger, happening: Happening): boolean {
  return happening.is === 'event' || (node.kind === 'asked' && node.by.is === 'defect' && node.by.class === happening.class);
}
