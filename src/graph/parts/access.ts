import type { GraphPart } from '../graph-part.js';
import { accessShapes } from '../graph-shape.js';
import { namesOfSite, type Name } from '../names-in-graph.js';
import type { RuleGraph, Stance } from '../rule-graph.js';

/** Moving parts, places, walks, steps and what must never be. */
export const access: GraphPart = {
  shapes: accessShapes,
  ofNodes: { 'position-is': ({ part }) => [['parts', part]] },
  names: ({ access: { places, walks, steps } }) => [
    ...places.map(({ under }): Name => ['parts', under]),
    ...walks.flatMap(({ from, to }): readonly Name[] => [
      ['places', from],
      ['places', to],
    ]),
    ...steps.flatMap((step): readonly Name[] => [['parts', step.part], ...namesOfSite(step.site)]),
  ],
  loose: loosePosition,
  inner: ({ access: { parts, places, steps, nevers } }) => [...parts, ...places, ...steps, ...nevers],
};

function loosePosition({ access: all, nodes }: RuleGraph): string | undefined {
  const positions = new Map(all.parts.map((part) => [part.id, new Set(part.positions.map(({ name }) => name))]));
  const has = (part: string, position: string): boolean => positions.get(part)?.has(position) === true;
  const stances: readonly Stance[] = [all.rest, all.work ?? {}];
  const whole =
    all.parts.every((part) => part.positions.length > 0 && Object.hasOwn(all.rest, part.id)) &&
    stances.every((stance) => Object.entries(stance).every(([part, position]) => has(part, position))) &&
    all.steps.every(({ part, from, to }) => has(part, from) && has(part, to)) &&
    nodes.every((node) => node.kind !== 'position-is' || has(node.part, node.position));
  return whole ? undefined : 'it names a position that its part does not have, or leaves a part without one';
}
