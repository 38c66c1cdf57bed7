import type { CompareNode } from '../../graph/rule-graph.js';
import { type Finding, found, unknown } from '../finding.js';
import { entriesOfLatest, isIn, latestReading, standingReading } from '../instrument.js';
import { firstPointReaching } from '../first-point-reaching.js';
import type { World } from '../world.js';

/** Whether the standing reading of an instrument lies in a range; unknown if there is none, or it is too old. */
export function compare(world: World, node: CompareNode): Finding {
  const point = standingReading(world, node.instrument);
  // A meter that counts from outings stands at 0 before the first of them.
  if (point === 'never-read' && node.instrument.is === 'meter' && world.index.meters.get(node.instrument.id)?.fromOutings === true)
    return found(isIn(0, node.range), null, []);
  if (typeof point === 'string') {
    const last = latestReading(world, node.instrument);
    return unknown(
      { what: 'reading', instrument: node.instrument.id, because: point },
      last?.when ?? null,
      last === null ? [] : [last.entry],
    );
  }
  const truth = isIn(point.value, node.range);
  const note = { is: 'reading', instrument: node.instrument.id, value: point.value, when: point.when } as const;
  if (node.instrument.is !== 'meter' || !truth || node.range.from === undefined)
    return found(truth, point.when, entriesOfLatest(world, node.instrument, point), note);
  // a meter only rises: what counts as evidence is when it came into the range, not each later reading
  const crossing = firstPointReaching(world, node.instrument.id, node.range.from, !node.range.fromIncluded);
  return found(
    truth,
    crossing?.when ?? point.when,
    [
      ...new Set([
        ...entriesOfLatest(world, node.instrument, point),
        ...(crossing === undefined ? [] : [crossing.entry, ...crossing.alongside]),
      ]),
    ],
    note,
  );
}
