/**
 * Which names a worked example uses.
 */
import { assertNever } from '../base/assert-never.js';
import type { ActNode, BecauseNode, ExampleNode, ExpectNode, NameNode, PointNode } from '../syntax/tree.js';
import { instrumentKinds, usesInCondition, type Use } from './references-in-conditions.js';
import { usesInLimit, usesInOccasion } from './references-in-tasks.js';
import type { NameKind } from './model.js';

/** The names in a worked example, in the order written. */
export function usesInExample(example: ExampleNode): readonly Use[] {
  return example.lines.flatMap((line) => line.items.flatMap((item) => (isExpect(item) ? usesInExpect(item) : usesInAct(item))));
}

function isExpect(item: ActNode | ExpectNode): item is ExpectNode {
  return item.kind === 'expect-machine' || item.kind === 'expect-task';
}

function usesInAct(act: ActNode): readonly Use[] {
  switch (act.kind) {
    case 'act-meter':
      return [use(act.name, 'meter')];
    case 'act-reads':
      return [{ name: act.name, kinds: instrumentKinds }];
    case 'act-done':
      return act.tasks.map((task) => use(task, 'task'));
    case 'act-outing':
      return [...act.duties.map((duty) => use(duty, 'duty')), ...act.attachments.map((name) => use(name, 'attachment'))];
    case 'act-happens':
      return [use(act.event, 'event')];
    case 'act-opens':
    case 'act-closes':
      return [use(act.defect, 'defect')];
    case 'act-attached':
    case 'act-detached':
      return [use(act.attachment, 'attachment')];
    case 'act-stands':
      return act.items.map(({ part }) => use(part, 'position'));
    case 'act-states':
      return [use(act.task, 'task'), ...(act.meter === undefined ? [] : [use(act.meter, 'meter')])];
    case 'act-storage':
    case 'act-refuelled':
    case 'act-service':
      return [];
    default:
      return assertNever(act);
  }
}

function usesInExpect(expect: ExpectNode): readonly Use[] {
  if (expect.kind === 'expect-machine') return [];
  return [
    use(expect.task, 'task'),
    ...(expect.because === undefined ? [] : usesInBecause(expect.because)),
    ...expect.until.flatMap(usesInPoint),
  ];
}

function usesInBecause(because: BecauseNode): readonly Use[] {
  switch (because.kind) {
    case 'because-limit':
      return usesInLimit(because.limit);
    case 'because-occasion':
      return usesInOccasion(because.what);
    case 'because-when':
      return usesInCondition(because.condition);
    case 'because-name':
      return [{ name: because.name, kinds: ['task', 'defect', 'gauge', 'dipstick', 'event', 'duty'] }];
    default:
      return assertNever(because);
  }
}

function usesInPoint(point: PointNode): readonly Use[] {
  return point.kind === 'point-meter' ? [use(point.meter, 'meter')] : [];
}

function use(name: NameNode, kind: NameKind): Use {
  return { name, kinds: [kind] };
}
