import { compareTexts } from '../base/compare-texts.js';
import { compareMoments } from '../values/moment.js';
import type { Entry } from './entry.js';
import type { Layout } from './facts.js';
import { gather } from '../base/gather.js';
import type { StraySink } from './stray.js';
import type { InstrumentPoint, Timeline } from './timeline.js';

type Noted = NonNullable<Entry['readings']>[string];

/** Where a dipstick stands, in shares of its range. */
const MARKS: ReadonlyMap<Noted, number> = new Map<Noted, number>([
  ['below-low', -Infinity],
  ['low', 0],
  ['full', 1],
  ['above-full', Infinity],
]);

/** Gauge or dipstick → what it read, in order. */
export function readInstruments({ dated, names: { gauges, dipsticks }, takenAt, strays }: Layout): Timeline['instruments'] {
  const known = new Map<string, unknown>([...gauges, ...dipsticks]);
  const points: (InstrumentPoint & { readonly instrument: string })[] = [];
  for (const each of dated) {
    for (const [instrument, noted] of Object.entries(each.entry.readings ?? {})) {
      const value = valueOf(each.entry.id, instrument, noted, { known, dipsticks }, strays);
      const when = takenAt(each);
      if (value !== null && when !== null) points.push({ instrument, entry: each.entry.id, when, value });
    }
  }
  points.sort((a, b) => compareMoments(a.when, b.when) || compareTexts(a.entry, b.entry));
  const lists = gather(points, ({ instrument }) => instrument);
  return new Map([...lists].map(([name, list]) => [name, list.map(({ entry, when, value }) => ({ entry, when, value }))]));
}

/** What is read against: all instruments, and those of them that have marks. */
interface Instruments {
  readonly known: ReadonlyMap<string, unknown>;
  readonly dipsticks: ReadonlyMap<string, unknown>;
}

function valueOf(entry: string, instrument: string, noted: Noted, { known, dipsticks }: Instruments, strays: StraySink): number | null {
  if (!strays.has(entry, 'gauge or dipstick', instrument, known)) return null;
  if (typeof noted === 'number') return noted;
  if (dipsticks.has(instrument)) return MARKS.get(noted) ?? null;
  strays.report(entry, `\`${instrument}\` is a gauge; \`${noted}\` is a mark of a dipstick`);
  return null;
}
