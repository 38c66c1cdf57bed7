import type { Rule } from '../context.js';
import { placed } from '../model.js';
import { diagnostic } from '../report.js';

/** An event of a day that the schedule names is noted by nobody, in no worked example either: the entry would count for nothing. */
export const happensByItself: Rule = {
  codes: ['happensByItself'],
  scope: 'declaration',
  check: ({ model }) =>
    placed(model, 'example').flatMap(({ node }) =>
      node.lines.flatMap(({ items }) =>
        items.flatMap((item) => {
          const event = item.kind === 'act-happens' ? model.meaning.get(item.event)?.node : undefined;
          if (item.kind !== 'act-happens' || event?.kind !== 'event' || event.on === undefined) return [];
          const message = `\`${item.event.text}\` happens on ${event.on.text} by itself.`;
          const labels = [{ at: event.on.at, text: 'on this day, to every machine' }];
          return [
            diagnostic('happensByItself', { at: item.at, message, labels, help: 'Leave it out here, or take the day from the event.' }),
          ];
        }),
      ),
    ),
};
