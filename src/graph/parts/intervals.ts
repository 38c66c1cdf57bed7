import { namesNothing, type GraphPart } from '../graph-part.js';
import { commonShapes } from '../graph-shape.js';
import { namesOfAmount } from '../names-in-graph.js';

/** What every reader reads: intervals, whichever comes first or last, the several rules of one task; and what machines and tasks have besides. */
export const intervals: GraphPart = {
  shapes: commonShapes,
  ofNodes: { interval: ({ amount }) => namesOfAmount(amount), whichever: namesNothing, any: namesNothing },
};
