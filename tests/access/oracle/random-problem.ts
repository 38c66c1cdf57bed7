/* eslint-disable @typescript-eslint/no-non-null-assertion -- brute force is kept as plain as can be: a hole in an array would be a failing test */
/** Random machines for the properties: small enough for brute force, with everything that the search has to get right. */
import fc from 'fast-check';
import type { AccessProblem, Move, Need } from '../../../src/access/problem.js';
import type { Box, StanceSet } from '../../../src/access/stance-set.js';

/** Conditions over some parts, as one or two boxes; the parts in `free` are not spoken of. */
function stanceSet(sizes: readonly number[], free: readonly number[], loose: number): fc.Arbitrary<StanceSet> {
  const mask = (size: number, part: number): fc.Arbitrary<number> => {
    const all = 2 ** size - 1;
    if (free.includes(part)) return fc.constant(all);
    return fc.oneof({ weight: loose, arbitrary: fc.constant(all) }, { weight: 1, arbitrary: fc.integer({ min: 1, max: all }) });
  };
  const box: fc.Arbitrary<Box> = fc.tuple(...sizes.map(mask)).map((masks) => masks);
  return fc.array(box, { minLength: 1, maxLength: 2 });
}

function closed(places: number, direct: readonly (readonly number[])[]): number[][] {
  const walk = Array.from({ length: places }, (_, a) =>
    Array.from({ length: places }, (__, b) => (a === b ? 0 : Math.min(direct[a]![b]!, direct[b]![a]!))),
  );
  for (let via = 0; via < places; via++)
    for (let a = 0; a < places; a++) for (let b = 0; b < places; b++) walk[a]![b] = Math.min(walk[a]![b]!, walk[a]![via]! + walk[via]![b]!);
  return walk;
}

export interface RandomSize {
  readonly parts: number;
  readonly positions: number;
  readonly needs: number;
  readonly places: number;
}

export function randomProblem(most: RandomSize): fc.Arbitrary<AccessProblem> {
  return fc
    .record({
      sizes: fc.array(fc.integer({ min: 2, max: most.positions }), { minLength: 1, maxLength: most.parts }),
      places: fc.integer({ min: 0, max: most.places }),
      needs: fc.integer({ min: 0, max: most.needs }),
    })
    .chain(({ sizes, places, needs }) => {
      const place = places === 0 ? fc.constant(null) : fc.option(fc.integer({ min: 0, max: places - 1 }), { nil: null });
      const seconds = fc.integer({ min: 0, max: 9 });
      const move: fc.Arbitrary<Move> = fc.integer({ min: 0, max: sizes.length - 1 }).chain((part) =>
        fc
          .record({
            part: fc.constant(part),
            ends: fc.uniqueArray(fc.integer({ min: 0, max: sizes[part]! - 1 }), { minLength: 2, maxLength: 2 }),
            during: stanceSet(sizes, [part], 4),
            place,
            seconds,
          })
          .map(({ ends, ...rest }) => ({ ...rest, from: ends[0]!, to: ends[1]! })),
      );
      const moves = fc
        .array(fc.tuple(move, fc.boolean()), { minLength: 1, maxLength: 3 * sizes.length })
        .map((list) => list.flatMap(([one, back]) => (back ? [one, { ...one, from: one.to, to: one.from }] : [one])));
      const need = (index: number): fc.Arbitrary<Need> =>
        fc.record({
          stance: stanceSet(sizes, [], 2),
          place,
          seconds,
          after:
            index === 0
              ? fc.constant([])
              : fc.oneof(
                  { weight: 3, arbitrary: fc.constant([]) },
                  { weight: 1, arbitrary: fc.uniqueArray(fc.integer({ min: 0, max: index - 1 }), { maxLength: 2 }) },
                ),
        });
      const stance = fc.tuple(...sizes.map((size) => fc.integer({ min: 0, max: size - 1 }))).map((list) => list);
      const distance = fc.oneof(
        { weight: 1, arbitrary: fc.constant(0) },
        { weight: 6, arbitrary: fc.integer({ min: 1, max: 9 }) },
        { weight: 1, arbitrary: fc.constant(Infinity) },
      );
      return fc.record({
        parts: fc.constant(sizes),
        moves,
        nevers: fc.array(stanceSet(sizes, [], 1), { maxLength: 2 }),
        walk: fc
          .array(fc.array(distance, { minLength: places, maxLength: places }), { minLength: places, maxLength: places })
          .map((direct) => closed(places, direct)),
        needs: fc.tuple(...Array.from({ length: needs }, (_, index) => need(index))).map((list) => [...list]),
        start: fc.record({ stance, place }),
        goal: fc
          .tuple(stance, fc.array(fc.boolean(), { minLength: sizes.length, maxLength: sizes.length }))
          .map(([goal, told]) => goal.map((position, part) => (told[part] ? position : null))),
      });
    });
}
