/** Which facets two timelines differ in, and which an entry can reach into. */
import { assertNever } from '../base/assert-never.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry, EntryId } from '../history/entry.js';
import type { Timeline } from '../history/timeline.js';
import { type Facet, facet, MACHINE, OUTINGS, REFUELLINGS, STORAGE, TOP_UPS } from './facet.js';
import { isSame } from './is-same.js';

/** The facets that are not the same in both. */
export function differing(a: Timeline, b: Timeline): ReadonlySet<Facet> {
  const found = new Set<Facet>();
  const maps = [
    ['meter', a.meters, b.meters],
    ['instrument', a.instruments, b.instruments],
    ['doing', a.doings, b.doings],
    ['doing', a.statements, b.statements],
    ['event', a.events, b.events],
    ['defect', a.defects, b.defects],
    ['attachment', a.attachments, b.attachments],
    ['position', a.positions, b.positions],
  ] as const;
  for (const [kind, one, other] of maps) {
    for (const name of new Set([...one.keys(), ...other.keys()])) if (!isSame(one.get(name), other.get(name))) found.add(facet(kind, name));
  }
  if (!isSame(a.machine, b.machine)) found.add(MACHINE);
  if (!isSame(a.outings, b.outings)) found.add(OUTINGS);
  if (!isSame(a.storage, b.storage)) found.add(STORAGE);
  if (!isSame(a.refuellings, b.refuellings)) found.add(REFUELLINGS);
  if (!isSame(a.topUps, b.topUps)) found.add(TOP_UPS);
  return found;
}

/** The facets that an entry can change; of one that voids or confirms another, those of the other. */
export function reachOf(graph: RuleGraph, entry: Entry, byId: ReadonlyMap<EntryId, Entry>, depth = 0): ReadonlySet<Facet> {
  const meters = Object.keys(entry.meters ?? {}).map((id) => facet('meter', id));
  const readings = Object.keys(entry.readings ?? {}).map((id) => facet('instrument', id));
  return new Set([...meters, ...readings, ...ofKind(graph, entry, byId, depth)]);
}

/** Voids of voids: deeper than this nobody goes. */
const DEEPEST = 8;

function ofKind(graph: RuleGraph, entry: Entry, byId: ReadonlyMap<EntryId, Entry>, depth: number): Iterable<Facet> {
  const counted = graph.meters.filter(({ fromOutings }) => fromOutings).map(({ id }) => facet('meter', id));
  switch (entry.kind) {
    case 'machine':
      return [MACHINE];
    case 'reading':
    case 'finding':
      return [];
    case 'done':
      return [...entry.tasks.map((task) => facet('doing', task)), ...graph.defects.map(({ id }) => facet('defect', id))];
    case 'outing':
      return [OUTINGS, ...counted, ...graph.attachments.map(({ id }) => facet('attachment', id))];
    case 'defect-opened':
    case 'defect-closed':
      return [facet('defect', entry.defect)];
    case 'event':
      return [facet('event', entry.event)];
    case 'attached':
    case 'detached':
      return [facet('attachment', entry.attachment), ...counted];
    case 'meter-replaced':
      return [facet('meter', entry.meter)];
    case 'stands':
      return Object.keys(entry.positions).map((part) => facet('position', part));
    case 'storage':
      return [STORAGE];
    case 'refuelled':
      return [REFUELLINGS];
    case 'topped-up':
      return [TOP_UPS];
    case 'stated':
      return [facet('doing', entry.task)];
    case 'void':
    case 'confirm': {
      const other = byId.get(entry.entry);
      return other === undefined || depth >= DEEPEST ? [] : reachOf(graph, other, byId, depth + 1);
    }
    default:
      return assertNever(entry);
  }
}
