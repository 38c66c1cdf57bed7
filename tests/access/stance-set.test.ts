/** Sets of stances say of every stance what the conditions they stand for say. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  everyStance,
  holds,
  join,
  meet,
  MOST_BOXES,
  NO_STANCE,
  partsNamed,
  type Stance,
  type StanceSet,
  surelyImplies,
  withPartAt,
  withPartFixed,
  withPartNotAt,
} from '../../src/access/stance-set.js';

const sizes = [3, 2, 4];
const stances: readonly Stance[] = [0, 1, 2].flatMap((a) => [0, 1].flatMap((b) => [0, 1, 2, 3].map((c) => [a, b, c])));
const everything = everyStance(sizes);

/** Unions of meets of what can be said of one part: whatever a schedule can say. */
const simple = fc.tuple(fc.nat(2), fc.array(fc.nat(3), { maxLength: 3 }), fc.boolean()).map(([part, positions, not]): StanceSet => {
  const there = positions.filter((position) => position < (sizes[part] ?? 0));
  return not ? withPartNotAt(sizes, part, there) : withPartAt(sizes, part, there);
});
const anySet = fc.array(fc.array(simple, { maxLength: 2 }), { maxLength: 3 }).map((terms) =>
  terms.reduce<StanceSet>(
    (all, term) =>
      both(
        join(
          all,
          term.reduce<StanceSet>((one, each) => both(meet(one, each)), everything),
        ),
      ),
    NO_STANCE,
  ),
);

function both(set: StanceSet | null): StanceSet {
  if (set === null) throw new Error('too tangled');
  return set;
}

/** Which stances a set has, as a text that can be compared. */
function members(set: StanceSet): string {
  return stances.map((stance) => (holds(set, stance) ? '1' : '0')).join('');
}

function isTidy(set: StanceSet): boolean {
  const within = (box: readonly number[], other: readonly number[]): boolean =>
    box.every((mask, part) => (mask & ~(other[part] ?? 0)) === 0);
  return set.every((box, index) => !box.includes(0) && set.every((other, at) => at === index || !within(box, other)));
}

describe('a set of stances', () => {
  test.each([
    [1, [0], '111100001111000011110000'],
    [0, [0, 2], '111111110000000011111111'],
    [2, [3], '000100010001000100010001'],
    [2, [], '000000000000000000000000'],
  ])('with part %i at %j', (part, positions, expected) => {
    expect(members(withPartAt(sizes, part, positions))).toBe(expected);
    const others = [...expected].map((bit) => (bit === '1' ? '0' : '1')).join('');
    expect(members(withPartNotAt(sizes, part, positions))).toBe(others);
  });

  test('every stance is in every stance, none in none', () => {
    expect(members(everything)).toBe('1'.repeat(24));
    expect(members(NO_STANCE)).toBe('0'.repeat(24));
    expect(withPartNotAt(sizes, 1, [0, 1])).toEqual(NO_STANCE);
  });

  test('meeting and joining are *and* and *or*, and leave no box empty or inside another', () => {
    fc.assert(
      fc.property(anySet, anySet, (one, other) => {
        const [a, b] = [members(one), members(other)];
        const bits = (of: (x: boolean, y: boolean) => boolean): string =>
          [...a].map((bit, at) => (of(bit === '1', b[at] === '1') ? '1' : '0')).join('');
        const [met, joined] = [both(meet(one, other)), both(join(one, other))];
        expect(members(met)).toBe(bits((x, y) => x && y));
        expect(members(joined)).toBe(bits((x, y) => x || y));
        expect([met, joined].map(isTidy)).toEqual([true, true]);
      }),
    );
  });

  test('surely implies only what it implies, itself, everything, and whatever it was joined to', () => {
    fc.assert(
      fc.property(anySet, anySet, (one, other) => {
        if (surelyImplies(one, other)) expect(stances.every((stance) => !holds(one, stance) || holds(other, stance))).toBe(true);
        expect(surelyImplies(one, one)).toBe(true);
        expect(surelyImplies(one, everything)).toBe(true);
        expect(surelyImplies(one, both(join(one, other)))).toBe(true);
        expect(surelyImplies(everything, one)).toBe(one.length === 1 && members(one) === members(everything));
      }),
    );
  });

  test('names the parts that it says anything about', () => {
    const set = both(join(withPartAt(sizes, 0, [1]), both(meet(withPartAt(sizes, 0, [2]), withPartNotAt(sizes, 2, [0])))));
    expect(partsNamed(set, sizes)).toEqual([0, 2]);
    expect(partsNamed(everything, sizes)).toEqual([]);
  });

  test('with a part fixed asks of the others what it asked where that part stood there', () => {
    fc.assert(
      fc.property(anySet, fc.nat(2), fc.nat(1), (set, part, position) => {
        const fixed = withPartFixed(set, sizes, part, position);
        for (const stance of stances) {
          const there = stance.map((each, at) => (at === part ? position : each));
          expect(holds(fixed, stance)).toBe(holds(set, there));
        }
        expect(isTidy(fixed)).toBe(true);
      }),
    );
  });

  test('is too tangled past so many boxes', () => {
    // One part with two of its positions in each box: no two boxes lie in one another.
    const many = (count: number, from = 0): StanceSet =>
      Array.from({ length: count }, (_, index) => [1 << (index % 30), 1 << Math.floor((from + index) / 30)]);
    expect(join(many(MOST_BOXES - 30), many(30, MOST_BOXES))?.length).toBeLessThanOrEqual(MOST_BOXES);
    const wide = Array.from({ length: MOST_BOXES }, (_, index) => [index + 1, 2 ** 20 - index]);
    expect(meet(wide, everyStance([30, 30]))).not.toBeNull();
  });

  /** One position of each part in each box: no two lie in one another. */
  const single = (count: number): StanceSet =>
    Array.from({ length: count }, (_, index) => [1 << (index % 16), 1 << (Math.floor(index / 16) % 16), 1 << Math.floor(index / 256)]);

  test('that are joined may have 1,024 boxes, and not one more', () => {
    const [all, more] = [single(1024), single(1025).slice(1024)];
    expect(join(all.slice(0, 1020), all.slice(1020))).toEqual(all);
    expect(join(all, more)).toBeNull();
    // One that is there already adds nothing, and one that others lie in takes their place.
    expect(join(all, all.slice(0, 1))).toEqual(all);
    expect(join(all.slice(1), [[3, 3, 1]])).toHaveLength(1021);
  });

  test('that are met take so many boxes too: 1,024, and not one more', () => {
    const last = (count: number): StanceSet => Array.from({ length: count }, (_, index) => [2 ** 30 - 1, 2 ** 30 - 1, 1 << index]);
    const first = single(128).map(([one = 0, other = 0]) => [one, other, 2 ** 9 - 1]);
    expect(meet(first, last(8))).toHaveLength(1024);
    expect(meet(first, last(9))).toBeNull();
  });
});
