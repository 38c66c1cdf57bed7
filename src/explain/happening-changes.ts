/**
 * Events and defects that would bring a task up.
 */
import type { Trigger } from '../graph/rule-graph.js';
import type { Change } from './change.js';
import type { RuleFacts } from './explanation.js';
import { mayAlter, reachesInto } from './influence.js';
import type { Influence } from './influence.js';
import type { Ground } from './ground.js';
import { ANYTHING, certain, exactly } from './possible.js';
import type { Possible } from './possible.js';
import { taskStateIf } from './what-if.js';

type Happening =
  { readonly is: 'event'; readonly event: string } | { readonly is: 'defect'; readonly defect: string; readonly class: string };

/** In the order of the rules; none on a day on which the task was done, when it could not be told which came first. */
export function happeningChanges(ground: Ground, rule: RuleFacts): readonly Change[] {
  if (ground.standing.doneToday) return [];
  return happeningsIn(rule).flatMap((happening) => {
    const becomes = stateIf(ground, happening);
    if (becomes === null || becomes === ground.standing.task.state) return [];
    return [
      happening.is === 'event'
        ? { change: 'happens', event: happening.event, becomes }
        : { change: 'opens', defect: happening.defect, class: happening.class, becomes },
    ];
  });
}

function happeningsIn(rule: RuleFacts): readonly Happening[] {
  const node = rule.node;
  const own: Happening[] = [];
  if (node.kind === 'event' && node.within === undefined) own.push({ is: 'event', event: node.event });
  if (
    node.kind === 'asked' &&
    node.by.is === 'defect' &&
    node.within === undefined &&
    rule.note?.is === 'not-asked' &&
    rule.note.defect?.closed !== null
  )
    own.push({ ...node.by });
  return [...own, ...rule.parts.flatMap(happeningsIn)];
}

function stateIf(ground: Ground, happening: Happening): Change['becomes'] | null {
  const influence: Influence = happening;
  const subject = { rule: ground.rule, gate: ground.gate, state: ground.standing.task.state };
  return certain(
    taskStateIf(subject, {
      leaf: (leaf) => leafIf(leaf, happening, influence),
      truth: (condition) => (mayAlter(condition, influence) ? null : (condition.truth ?? null)),
    }),
  );
}

function leafIf(rule: RuleFacts, happening: Happening, influence: Influence): Possible {
  const node = rule.node as Trigger;
  if (concerns(node, happening)) return isAtOnce(node) && matches(node, happening) ? exactly('due') : ANYTHING;
  if (reachesInto(rule, influence)) return ANYTHING;
  return rule.state === undefined ? ANYTHING : exactly(rule.state);
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
