import { notedEvents } from '../graph/noted-events.js';
import { ofKind, stamp } from './dated-entry.js';
import type { Layout } from './facts.js';
import { gather } from '../base/gather.js';
import type { Timeline } from './timeline.js';

/** Event → when it happened, in order; of those that are noted as such. */
export function readEvents({ dated, names, strays }: Layout): Timeline['events'] {
  const events = new Map(notedEvents({ events: [...names.events.values()] }).map((event) => [event.id, event]));
  const known = ofKind(dated, 'event').filter(({ entry }) => strays.has(entry.id, 'event', entry.event, events));
  const lists = gather(known, ({ entry }) => entry.event);
  return new Map([...lists].map(([event, entries]) => [event, entries.map(stamp)]));
}
