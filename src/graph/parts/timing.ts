import { namesNothing, type GraphPart } from '../graph-part.js';
import { timingShapes } from '../graph-shape.js';
import { namesOfAmount, type Name } from '../names-in-graph.js';

/** The other ways of saying when something is due: stages, marks, duties, occasions, events. */
export const timing: GraphPart = {
  shapes: timingShapes,
  ofNodes: {
    'duty-mix': ({ meter, duties }) => [['meters', meter], ...duties.map(({ duty }): Name => ['duties', duty])],
    stages: ({ amounts, from }) => [...amounts.flatMap(namesOfAmount), ...(from.is === 'event' ? [['events', from.event] as const] : [])],
    first: namesNothing,
    marks: ({ amount }) => namesOfAmount(amount),
    'calendar-marks': namesNothing,
    'calendar-window': namesNothing,
    occasion: namesNothing,
    'shortly-before': namesNothing,
    attaching: ({ attachment }) => [['attachments', attachment]],
    refuelling: namesNothing,
    event: ({ event, within }) => [['events', event], ...namesOfAmount(within)],
  },
};
