import type { Rule } from '../context.js';
import { marginOn } from '../quantities/margin.js';
import { diagnostic } from '../report.js';
import { eachTask, marginsIn } from '../task-margins.js';

/** A margin is shorter than the limit it goes with. */
export const allowanceTooLong: Rule = {
  codes: ['allowanceTooLong'],
  scope: 'schedule',
  check: (context) =>
    eachTask(context, (model, node, limits) =>
      marginsIn(node).flatMap(({ word, margin }) => {
        // A percentage of more than all is told as an impossible number.
        if (word === 'stop' || (margin.kind === 'percent' && margin.number.value >= 100)) return [];
        const short = limits.find(
          ({ axis, amount, interval }) => interval && amount !== undefined && (marginOn(model, margin, axis) ?? -1) >= axis.size,
        );
        if (short === undefined) return [];
        return [
          diagnostic('allowanceTooLong', {
            at: margin.at,
            message: `This ${word} is as long as the interval itself.`,
            labels: [{ at: short.at, text: 'the interval' }],
            help: 'Write a shorter one.',
          }),
        ];
      }),
    ),
};
