import { namesNothing, type GraphPart } from '../graph-part.js';
import { conditionShapes } from '../graph-shape.js';
import { nameOf, namesOfAmount, type Name } from '../names-in-graph.js';
import type { RecentNode } from '../rule-graph.js';

/** What holds or not, and what depends on it; stops. */
export const conditions: GraphPart = {
  shapes: conditionShapes,
  ofNodes: {
    when: namesNothing,
    while: namesNothing,
    and: namesNothing,
    or: namesNothing,
    not: namesNothing,
    'attachment-is': ({ attachment }) => [['attachments', attachment]],
    'duty-is': ({ duty }) => [['duties', duty]],
    recent: ({ what, within }) => [recentName(what), ...namesOfAmount(within)],
    age: namesNothing,
    idle: namesNothing,
    unworked: ({ task }) => [['tasks', task]],
    'at-work': namesNothing,
    season: namesNothing,
  },
};

function recentName(what: RecentNode['what']): Name {
  switch (what.is) {
    case 'read':
      return nameOf(what.instrument);
    case 'done':
      return ['tasks', what.task];
    case 'happened':
      return ['events', what.event];
  }
}
