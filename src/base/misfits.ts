/**
 * Holds a value to a shape: where something stands that does not fit, and what should stand there.
 */
import { assertNever } from './assert-never.js';
import { scalarWanted } from './scalar-wanted.js';
import type { ObjectShape, Shape, Shapes, TextShape } from './shape.js';

/** A place in a value, and what should stand there. */
export interface Misfit {
  /** Names of members and indices of items, from outside in; empty for the value as a whole. */
  readonly path: readonly string[];
  /** What should stand there, as in `a number`, `at least 0` or `one of begins, ends`. */
  readonly wanted: string;
  /** Whether nothing stands there at all. */
  readonly missing: boolean;
  /** Whether something of a shape stands there that was not given: it may be right. */
  readonly unread?: true;
}

/** One walk through a value. */
interface Walk {
  readonly shapes: Shapes;
  readonly most: number;
  readonly found: Found[];
}

/** A misfit whose path is put together on the way out, so that what fits costs no lists. */
interface Found extends Misfit {
  readonly path: string[];
}

type Members = Readonly<Record<string, unknown>>;

/**
 * The first so many misfits of a value, in the order of its shape; none where it fits.
 *
 * Law: no deeper than the shapes themselves go, and of the value nothing is repeated but names of members and indices.
 *
 * @example misfits({ days: -1 }, { is: 'object', members: { days: { is: 'number', whole: true, least: 0 } }, optional: [] })
 *   // [{ path: ['days'], wanted: 'at least 0', missing: false }]
 */
export function misfits(value: unknown, shape: Shape, shapes: Shapes = {}, most = Infinity): readonly Misfit[] {
  const walk: Walk = { shapes, most, found: [] };
  look(walk, value, shape);
  return walk.found;
}

function look(walk: Walk, value: unknown, shape: Shape): void {
  if (walk.found.length >= walk.most) return;
  switch (shape.is) {
    case 'text':
    case 'flag':
    case 'number':
    case 'one-of':
    case 'either':
      return say(walk, value, scalarWanted(value, shape));
    case 'list':
      return lookAtItems(walk, value, shape.of, shape.least ?? 0);
    case 'map':
      return isRecord(value) ? lookAtValues(walk, value, shape.of, shape.names) : say(walk, value, 'an object with a value for each name');
    case 'object':
      return isRecord(value) ? lookAtMembers(walk, value, shape) : say(walk, value, 'an object');
    case 'choice': {
      if (!isRecord(value)) return say(walk, value, 'an object');
      const tag = own(value, shape.tag);
      const chosen = typeof tag === 'string' && Object.hasOwn(shape.of, tag) ? shape.of[tag] : undefined;
      if (chosen !== undefined) return look(walk, value, chosen);
      return say(walk, tag, `one of ${Object.keys(shape.of).join(', ')}`, [shape.tag]);
    }
    case 'named': {
      const named = walk.shapes[shape.name];
      return named === undefined ? sayUnread(walk) : look(walk, value, named);
    }
    default:
      return assertNever(shape);
  }
}

function lookAtItems(walk: Walk, items: unknown, of: Shape, least: number): void {
  if (!Array.isArray(items)) return say(walk, items, 'a list');
  if (items.length < least) return say(walk, items, 'not empty');
  for (let index = 0; index < items.length; index += 1) inside(walk, String(index), items[index], of);
}

function lookAtValues(walk: Walk, values: Members, of: Shape, names: TextShape | undefined): void {
  for (const name of Object.keys(values)) {
    const odd = oddName(name, names);
    if (odd === null) inside(walk, name, values[name], of);
    else say(walk, values[name], odd, [name]);
  }
}

function oddName(name: string, names: TextShape | undefined): string | null {
  // A member of that name is lost whenever an object is built anew, so none may have it.
  if (name === '__proto__') return 'a name other than `__proto__`';
  if (names === undefined || scalarWanted(name, names) === null) return null;
  return `a name of ${names.least ?? 0} to ${names.most ?? 'any number of'} characters`;
}

function lookAtMembers(walk: Walk, value: Members, { members, optional, open }: ObjectShape): void {
  for (const name in members) {
    const member = own(value, name);
    const of = members[name];
    if (of === undefined || (member === undefined && optional.includes(name))) continue;
    inside(walk, name, member, of);
  }
  if (open !== true && Object.keys(value).some((name) => !Object.hasOwn(members, name))) say(walk, value, 'without other members');
}

function inside(walk: Walk, name: string, value: unknown, shape: Shape): void {
  let place = walk.found.length;
  look(walk, value, shape);
  for (; place < walk.found.length; place += 1) walk.found[place]?.path.unshift(name);
}

function say({ most, found }: Walk, value: unknown, wanted: string | null, path: string[] = []): void {
  if (wanted !== null && found.length < most) found.push({ path, wanted, missing: value === undefined });
}

function sayUnread({ most, found }: Walk): void {
  if (found.length < most) found.push({ path: [], wanted: 'nothing that is not read here', missing: false, unread: true });
}

function own(value: Members, name: string): unknown {
  return Object.hasOwn(value, name) ? value[name] : undefined;
}

function isRecord(value: unknown): value is Members {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
