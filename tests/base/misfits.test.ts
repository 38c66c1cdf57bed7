import { describe, expect, test } from 'vitest';
import { knownMembers } from '../../src/base/known-members.js';
import { misfits } from '../../src/base/misfits.js';
import type { Shape } from '../../src/base/shape.js';
import { choice, either, list, map, number, object, oneOf, optional, text, type TypeOf, whole } from '../../src/base/typed-shape.js';

const name = text({ least: 1, most: 4 });
const shape = choice('kind', [
  object({ kind: oneOf('cat'), lives: whole({ least: 1, most: 9 }), weight: optional(number({ least: 0, over: true })) }),
  object({
    kind: oneOf('crate'),
    held: list(name, 1),
    marks: map(name, either(number({ most: 5 }), ['full'])),
    old: optional(oneOf('yes', 'no')),
  }),
]);

function said(value: unknown, most?: number): string {
  return misfits(value, shape, {}, most)
    .map(({ path, wanted, missing }) => `${path.join('.')}: ${missing ? 'missing, ' : ''}${wanted}`)
    .join('; ');
}

describe('what does not fit a shape', () => {
  test.each<[unknown, string]>([
    [{ kind: 'cat', lives: 9 }, ''],
    [{ kind: 'cat', lives: 9, colour: 'grey' }, ''],
    [{ kind: 'cat', lives: 9.5, weight: 0 }, 'lives: a whole number; weight: more than 0'],
    [{ kind: 'cat', lives: 10, weight: Infinity }, 'lives: at most 9; weight: a number'],
    [{ kind: 'cat' }, 'lives: missing, a whole number'],
    [{ kind: 'dog' }, 'kind: one of cat, crate'],
    [{ kind: 'constructor' }, 'kind: one of cat, crate'],
    [{}, 'kind: missing, one of cat, crate'],
    [[], ': an object'],
    [{ kind: 'crate', held: ['a', '', 'abcde'], marks: {} }, 'held.1: not empty; held.2: at most 4 characters'],
    [
      { kind: 'crate', held: [], marks: { a: 'empty', b: 6, full: 'full' } },
      'held: not empty; marks.a: a number, or one of full; marks.b: a number, or one of full',
    ],
    [
      { kind: 'crate', held: 'a', marks: [], old: 'maybe' },
      'held: a list; marks: an object with a value for each name; old: one of yes, no',
    ],
    [{ kind: 'crate', held: ['a'], marks: { abcde: 1 } }, 'marks.abcde: a name of 1 to 4 characters'],
    [JSON.parse('{"kind":"crate","held":["a"],"marks":{"__proto__":1}}'), 'marks.__proto__: a name other than `__proto__`'],
  ])('%j', (value, message) => expect(said(value)).toBe(message));

  test('no more is looked for than was asked', () => {
    expect(said({ kind: 'cat', lives: 10, weight: -1 }, 1)).toBe('lives: at most 9');
  });

  test('a closed object has no other members; a shape may be named', () => {
    const shapes: Record<string, Shape> = { flag: { is: 'flag' } };
    const closed: Shape = { is: 'object', members: { on: { is: 'named', name: 'flag' } }, optional: ['on'] };
    expect(misfits({ on: true }, closed, shapes)).toEqual([]);
    expect(misfits({ on: 1, off: 2 }, closed, shapes)).toEqual([
      { path: ['on'], wanted: 'true or false', missing: false },
      { path: [], wanted: 'without other members', missing: false },
    ]);
    expect(misfits(1, { is: 'named', name: 'none' })).toMatchObject([{ path: [], missing: false, unread: true }]);
  });
});

test('known members are copied in the order of the shape, the others left out', () => {
  const value = { old: 'yes', marks: { b: 1 }, more: 1, held: ['a'], kind: 'crate' } as const;
  const copy = knownMembers(value, shape);
  expect(JSON.stringify(copy)).toBe('{"kind":"crate","held":["a"],"marks":{"b":1},"old":"yes"}');
  expect((copy as { marks: unknown }).marks).not.toBe(value.marks);
});

test('a shape knows its type', () => {
  const entry: TypeOf<typeof shape> = { kind: 'crate', held: ['a'], marks: { a: 'full' } };
  const cat: TypeOf<typeof shape> = { kind: 'cat', lives: 9, weight: undefined };
  // @ts-expect-error: `lives` is missing
  const none: TypeOf<typeof shape> = { kind: 'cat' };
  expect([entry, cat, none].map(({ kind }) => kind)).toEqual(['crate', 'cat', 'cat']);
});
