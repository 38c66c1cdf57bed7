/**
 * Moving parts, places and steps as the graph keeps them. An attachment's schedule adds its own to the machine's.
 */
import { clausesOf } from '../check/clauses-of.js';
import { idIn, placed, type Home } from '../check/model.js';
import { secondsOf } from '../check/quantities/units.js';
import { sound } from '../check/whole.js';
import type { Access, Stance, Step } from '../graph/rule-graph.js';
import type { StepNode } from '../syntax/tree.js';
import { compileCondition } from './condition.js';
import { compileGrounds, compileSite } from './site.js';
import { idOf, originOf, type Workshop } from './workshop.js';

/** All that has to do with getting at things. */
export function compileAccess(shop: Workshop): Access {
  const rest = stance(shop, 'rest');
  const work = stance(shop, 'work');
  return {
    parts: placed(shop.model, 'position').map(({ node, home }) => ({
      id: idIn(home, node.name.text),
      ...(node.title === undefined ? {} : { title: node.title.text }),
      positions: node.positions.map(({ name, aloft }) => ({ name: name.text, aloft })),
      origin: originOf(shop, node.at),
    })),
    rest,
    // What `at work` leaves out is as at rest.
    ...(Object.keys(work).length === 0 ? {} : { work: { ...rest, ...work } }),
    places: placed(shop.model, 'place').map(({ node, home }) => ({
      id: idIn(home, node.name.text),
      title: node.title.text,
      ...(node.under === undefined ? {} : { under: idOf(shop, node.under) }),
      origin: originOf(shop, node.at),
    })),
    walks: placed(shop.model, 'walk').map(({ node }) => ({
      from: idOf(shop, node.from),
      to: idOf(shop, node.to),
      seconds: sound(secondsOf(node.time)),
    })),
    steps: placed(shop.model, 'step').map(({ node, home }) => compileStep(shop, home, node)),
    nevers: placed(shop.model, 'never').map(({ node, home }) => ({
      title: node.title.text,
      condition: compileCondition(shop, home, node.condition),
      origin: originOf(shop, node.at),
    })),
  };
}

function stance(shop: Workshop, which: 'rest' | 'work'): Stance {
  const items = placed(shop.model, 'rest').flatMap(({ node }) => (node.which === which ? node.items : []));
  return Object.fromEntries(items.map(({ part, position }) => [idOf(shop, part), position.text]));
}

function compileStep(shop: Workshop, home: Home, node: StepNode): Step {
  const conditions = clausesOf(node.clauses, 'while-stance').map(({ condition }) => compileCondition(shop, home, condition));
  const needed = conditions.length < 2 ? conditions[0] : shop.add({ kind: 'and', parts: conditions, origin: originOf(shop, node.at) });
  const back = clausesOf(node.clauses, 'back')[0];
  const oneWay = node.clauses.some(({ kind }) => kind === 'one-way');
  return {
    id: idIn(home, node.name.text),
    title: node.title.text,
    part: idOf(shop, node.part),
    from: node.from.text,
    to: node.to.text,
    while: needed,
    // A step that does not say how to go back is undone all the same.
    ...(oneWay ? {} : { back: { title: back?.title.text ?? `Bring the ${node.part.text} back to ${node.from.text}` } }),
    site: compileSite(shop, node.clauses),
    ...compileGrounds(node.clauses),
    origin: originOf(shop, node.at),
  };
}
