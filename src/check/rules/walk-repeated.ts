import type { Rule } from '../context.js';
import { placed } from '../model.js';
import { diagnostic } from '../report.js';
import { ticked } from '../words.js';

/** One time for each pair of places. */
export const walkRepeated: Rule = {
  codes: ['walkRepeated'],
  scope: 'schedule',
  check: ({ model }) => {
    const walks = placed(model, 'walk').map(({ node }) => ({
      node,
      ends: [model.meaning.get(node.from)?.id ?? '', model.meaning.get(node.to)?.id ?? ''].sort().join(' '),
    }));
    const first = new Map<string, (typeof walks)[number]>();
    return walks.flatMap((walk) => {
      const { node, ends } = walk;
      if (node.from.text === node.to.text)
        return [
          diagnostic('walkRepeated', {
            at: node.to.at,
            message: `This walk ends where it begins, at ${ticked(node.to.text)}.`,
            help: 'Write the place that it leads to.',
          }),
        ];
      if (ends.startsWith(' ')) return [];
      const earlier = first.get(ends);
      if (earlier === undefined) {
        first.set(ends, walk);
        return [];
      }
      return [
        diagnostic('walkRepeated', {
          at: node.at,
          message: 'The walk between these two places is already given.',
          labels: [{ at: earlier.node.at, text: 'here' }],
          help: 'Take one of the two out; it serves in either direction.',
        }),
      ];
    });
  },
};
