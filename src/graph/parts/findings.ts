import type { GraphPart } from '../graph-part.js';
import { findingShapes } from '../graph-shape.js';
import { nameOf, namesOfAmount, type Name } from '../names-in-graph.js';
import type { Outcome, RuleGraph } from '../rule-graph.js';

/** Gauges and dipsticks, what tasks read of them, defects, and what follows from each. */
export const findings: GraphPart = {
  shapes: findingShapes,
  ofNodes: {
    asked: ({ by, within }) => [by.is === 'reading' ? ['tasks', by.task] : ['defects', by.defect], ...namesOfAmount(within)],
    sooner: ({ dipstick }) => [['dipsticks', dipstick]],
    'defect-is': ({ defect }) => [['defects', defect]],
    compare: ({ instrument }) => [nameOf(instrument)],
    trend: ({ instrument }) => [nameOf(instrument)],
  },
  names: ({ tasks, defects }) => [
    ...tasks.flatMap(({ reads }) =>
      reads.flatMap(({ instrument, rules }) => [nameOf(instrument), ...rules.flatMap(({ outcome }) => namesOfOutcome(outcome))]),
    ),
    ...defects.flatMap(({ rules }) => rules.flatMap(({ outcome }) => namesOfOutcome(outcome))),
  ],
  loose: looseClass,
  inner: ({ tasks, defects }) => [
    ...defects.flatMap(({ rules }) => rules),
    ...tasks.flatMap(({ reads }) => reads.flatMap(({ rules }) => rules)),
  ],
};

function namesOfOutcome({ then }: Outcome): readonly Name[] {
  return then.flatMap(({ task, within }): readonly Name[] => [['tasks', task], ...namesOfAmount(within)]);
}

function looseClass({ defects, nodes, tasks }: RuleGraph): string | undefined {
  const classes = new Map(defects.map((defect) => [defect.id, new Set(defect.classes.map(({ name }) => name))]));
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const has = (defect: string, name: string | undefined): boolean => name === undefined || classes.get(defect)?.has(name) === true;
  const whole =
    defects.every(({ id, rules }) => rules.every((rule) => has(id, rule.class))) &&
    nodes.every((node) => {
      if (node.kind === 'defect-is') return has(node.defect, node.class) && has(node.defect, node.worseThan);
      if (node.kind !== 'asked') return true;
      const { by } = node;
      return by.is === 'defect' ? has(by.defect, by.class) : byId.get(by.task)?.reads[by.reads]?.rules[by.rule] !== undefined;
    });
  return whole ? undefined : 'it names a class that its defect does not have, or a reading that its task does not take';
}
