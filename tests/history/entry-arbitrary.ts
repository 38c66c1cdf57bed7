import { readFileSync } from 'node:fs';
import fc from 'fast-check';

interface KindSchema {
  readonly properties: Readonly<Record<string, { readonly const?: string }>>;
  readonly required: readonly string[];
}

/** As published: what is made here owes nothing to our own reading of entries. */
const schema = JSON.parse(readFileSync(new URL('../../grammar/history-entry.schema.json', import.meta.url), 'utf8')) as {
  readonly oneOf: readonly KindSchema[];
};

/** Members of entries, right and wrong; every kind of entry is made of some of them. */
const values = fc.oneof(
  fc.constantFrom<unknown>(
    '2026-05-01',
    '2026-02-29',
    '2024-02-29',
    '0000-01-01',
    '2026-13-01',
    '07:30',
    '24:00',
    'engine',
    '',
    'begins',
    'low',
    null,
    true,
  ),
  fc.constantFrom<unknown>('__proto__', 'x'.repeat(161), 'x'.repeat(4001)),
  fc.constantFrom<unknown>(0, -1, 1.5, 1e10, 1e11, -1e9, 5),
  fc.array(
    fc.oneof(
      fc.constantFrom<unknown>('mower', '', 3),
      fc.record({ duty: fc.constantFrom('tall', ''), hours: fc.constantFrom<unknown>(1, -1, 'x') }),
    ),
    { maxLength: 2 },
  ),
  fc.dictionary(fc.constantFrom('engine', '', 'x'.repeat(161)), fc.constantFrom<unknown>(1, -1, 'low', 'up', 'x'.repeat(161)), {
    maxKeys: 2,
  }),
);

const kinds = schema.oneOf.map(({ properties, required }) => ({
  kind: properties['kind']?.const ?? '',
  keys: Object.keys(properties).filter((key) => key !== 'kind'),
  required: required.filter((key) => key !== 'kind'),
}));

/** Likely values for a member, so that many of the entries are right. */
function likely(key: string): fc.Arbitrary<unknown> {
  if (['on', 'untilOn', 'inService', 'doneBy'].includes(key)) return fc.constantFrom('2026-05-01', '0001-01-01', '9999-12-31');
  if (['at', 'until'].includes(key)) return fc.constantFrom('00:00', '23:59');
  if (['meters', 'used', 'doneAt'].includes(key))
    return fc.dictionary(fc.constantFrom('engine', 'constructor'), fc.constantFrom(0, 1.5, 1e10));
  if (key === 'readings') return fc.dictionary(fc.constantFrom('coolant'), fc.constantFrom<unknown>(-40, 'low', 'above-full'));
  if (key === 'positions') return fc.constant({ loader: 'raised' });
  if (['tasks', 'attachments'].includes(key)) return fc.constantFrom(['mower'], ['a', 'b']);
  if (key === 'duties') return fc.constantFrom([{ duty: 'tall' }], [{ duty: 'tall', hours: 1 }]);
  if (key === 'phase') return fc.constantFrom('begins', 'ends');
  if (['hours', 'litres', 'minutes', 'final', 'initial', 'serial'].includes(key)) return fc.constantFrom(0, 3);
  return fc.constantFrom('engine', 'a few words');
}

/** An object that might be an entry: of a known kind, mostly right. */
export const maybeEntry: fc.Arbitrary<Record<string, unknown>> = fc
  .constantFrom(...kinds)
  .chain(({ kind, keys, required }) =>
    fc
      .record(
        Object.fromEntries(keys.map((key) => [key, fc.oneof({ arbitrary: likely(key), weight: 30 }, { arbitrary: values, weight: 1 })])),
        { requiredKeys: required },
      )
      .map((members) => ({ kind, ...members })),
  );
