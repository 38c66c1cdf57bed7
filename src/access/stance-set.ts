/**
 * Sets of stances, as a union of boxes.
 *
 * A *stance* gives every moving part a position. A *box* gives every part the positions that will do, as a bit mask; a stance is
 * in the box if each part is at one of them. A condition on positions becomes a union of boxes once, when it is translated, and
 * from then on every question about it (does this stance meet it, does it imply that one, what does it ask of this part alone)
 * is a few bit operations.
 *
 * INVARIANT: no box in a set has a part with no position left, and no box lies inside another of the same set.
 */

import { itemAt } from './item-at.js';

/** A position for each part, by index. */
export type Stance = readonly number[];

/** For each part the positions that will do: bit *p* stands for position *p*. At most 30 positions a part. */
export type Box = readonly number[];

/** Any stance that lies in one of the boxes. */
export type StanceSet = readonly Box[];

/** How many positions each part has. */
export type PartSizes = readonly number[];

/** More boxes than this and a condition is too tangled to work with; {@link meet} and {@link join} then answer `null`. */
export const MOST_BOXES = 1024;

/** Every stance. */
export function everyStance(parts: PartSizes): StanceSet {
  return [parts.map((size) => 2 ** size - 1)];
}

/** No stance. */
export const NO_STANCE: StanceSet = [];

/** The stances with `part` at one of `positions`. */
export function withPartAt(parts: PartSizes, part: number, positions: readonly number[]): StanceSet {
  const mask = positions.reduce((bits, position) => bits | (1 << position), 0);
  if (mask === 0) return NO_STANCE;
  return [parts.map((size, index) => (index === part ? mask : 2 ** size - 1))];
}

/** The stances with `part` anywhere but at one of `positions`. */
export function withPartNotAt(parts: PartSizes, part: number, positions: readonly number[]): StanceSet {
  const all = Array.from({ length: parts[part] ?? 0 }, (_, position) => position);
  return withPartAt(
    parts,
    part,
    all.filter((position) => !positions.includes(position)),
  );
}

/** Stances in both; `null` when that takes more than {@link MOST_BOXES} boxes. */
export function meet(first: StanceSet, second: StanceSet): StanceSet | null {
  const boxes: Box[] = [];
  for (const one of first) {
    for (const other of second) {
      const both = one.map((mask, part) => mask & (other[part] ?? 0));
      if (!both.includes(0)) addBox(boxes, both);
      if (boxes.length > MOST_BOXES) return null;
    }
  }
  return boxes;
}

/** Stances in either; `null` when that takes more than {@link MOST_BOXES} boxes. */
export function join(first: StanceSet, second: StanceSet): StanceSet | null {
  const boxes: Box[] = [...first];
  for (const box of second) {
    addBox(boxes, box);
    if (boxes.length > MOST_BOXES) return null;
  }
  return boxes;
}

/** Is the stance in the set? */
export function holds(set: StanceSet, stance: Stance): boolean {
  return set.some((box) => box.every((mask, part) => ((mask >> (stance[part] ?? 0)) & 1) === 1));
}

/** True only if every stance of `first` is in `second`. May be false where a box of `first` is covered by several of `second` together. */
export function surelyImplies(first: StanceSet, second: StanceSet): boolean {
  return first.every((box) => second.some((wider) => liesIn(box, wider)));
}

/** The parts that the set says anything about. */
export function partsNamed(set: StanceSet, parts: PartSizes): readonly number[] {
  const named: number[] = [];
  parts.forEach((size, part) => {
    const any = 2 ** size - 1;
    if (set.some((box) => box[part] !== any)) named.push(part);
  });
  return named;
}

/** The set with `part` read as standing at `position`: a condition on the other parts alone. */
export function withPartFixed(set: StanceSet, parts: PartSizes, part: number, position: number): StanceSet {
  const boxes: Box[] = [];
  for (const box of set) {
    if ((((box[part] ?? 0) >> position) & 1) === 0) continue;
    addBox(
      boxes,
      box.map((mask, index) => (index === part ? 2 ** (parts[part] ?? 0) - 1 : mask)),
    );
  }
  return boxes;
}

function liesIn(box: Box, wider: Box): boolean {
  return box.every((mask, part) => (mask & ~(wider[part] ?? 0)) === 0);
}

function addBox(boxes: Box[], box: Box): void {
  if (boxes.some((other) => liesIn(box, other))) return;
  for (let index = boxes.length - 1; index >= 0; index--) {
    if (liesIn(itemAt(boxes, index), box)) boxes.splice(index, 1);
  }
  boxes.push(box);
}
