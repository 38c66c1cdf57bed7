import { type Entry, type Moment, readTimeline, type RuleGraph } from '../../../engine.js';

/** What the hour meters that run in an outing showed last: the machine's own, and those of the attachments that go along. */
export function lastDials(
  graph: RuleGraph,
  entries: readonly Entry[],
  now: Moment,
  attachments: readonly string[],
): Readonly<Record<string, number>> {
  const { meters } = readTimeline(entries, graph, now);
  const running = graph.meters.filter(
    ({ unit, fromOutings, attachment }) => unit === 'h' && !fromOutings && (attachment === undefined || attachments.includes(attachment)),
  );
  return Object.fromEntries(
    running.flatMap(({ id }): readonly (readonly [string, number])[] => {
      const last = meters.get(id)?.points.at(-1);
      return last === undefined ? [] : [[id, last.shown]];
    }),
  );
}
