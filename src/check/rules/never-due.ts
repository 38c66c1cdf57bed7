import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import { isInPart } from '../in-part.js';
import { diagnostic } from '../report.js';
import { ticked } from '../words.js';

const timing = new Set(['every', 'first', 'series', 'while-every', 'when', 'occasion', 'sooner']);
const linking = new Set(['covers', 'restarts', 'met-by', 'mends']);

/** A task is due by itself, or something else in the schedule speaks of it, or it stands in for others. */
export const neverDue: Rule = {
  codes: ['neverDue'],
  scope: 'schedule',
  check: ({ model, headers, whole }) => {
    if (!whole) return [];
    const spoken = new Set(model.references.map(({ definition }) => definition?.node));
    return tasksIn(model).flatMap(({ node }) => {
      if (
        isInPart(headers, node.at) ||
        spoken.has(node) ||
        node.clauses.some(({ kind }) => timing.has(kind) || linking.has(kind) || kind === 'in-duty')
      )
        return [];
      const help = "Say when it is due, for example `every 100 h of engine` or `before each day's work`.";
      return [diagnostic('neverDue', { at: node.name.at, message: `Nothing ever makes ${ticked(node.name.text)} due.`, help })];
    });
  },
};
