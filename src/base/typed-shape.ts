/**
 * Shapes that know their TypeScript type, so that the two are written down once.
 *
 * Marked as without side effects, so that a bundler drops the shapes that nobody asks for.
 *
 * @example
 * const outing = object({ on: text({}), hours: optional(number({ least: 0 })) });
 * type Outing = TypeOf<typeof outing>; // { on: string; hours?: number | undefined }
 */
import type { ChoiceShape, NumberShape, ObjectShape, Shape, TextShape } from './shape.js';

declare const type: unique symbol;

/** A shape, and the type of the values that fit it. */
export type Typed<T, S extends Shape = Shape> = S & { readonly [type]?: T };
/** The type of the values that fit a shape. */
export type TypeOf<S> = S extends { readonly [type]?: infer T } ? Exclude<T, undefined> : never;

/** A member that may be missing. */
export interface Optional<T> {
  readonly may: Typed<T>;
}

type Member = Shape | Optional<unknown>;
/** The members of an object, by name. */
export type Members = Readonly<Record<string, Member>>;
type MayMiss<M extends Members> = { [K in keyof M]: M[K] extends Optional<unknown> ? K : never }[keyof M];
/** Spelt out, so that editors and messages show the members. */
type Flat<T> = T extends infer U ? { [K in keyof U]: U[K] } : never;
type Filled<M extends Members> = Flat<
  { [K in Exclude<keyof M, MayMiss<M>>]: TypeOf<M[K]> } & {
    [K in MayMiss<M>]?: (M[K] extends Optional<infer T> ? T : never) | undefined;
  }
>;

/** A text; see {@link Shape} for the bounds. */
/* @__NO_SIDE_EFFECTS__ */
export function text(bounds: Omit<TextShape, 'is'>): Typed<string, TextShape> {
  return { is: 'text', ...bounds };
}

/** A number that is not infinite. */
/* @__NO_SIDE_EFFECTS__ */
export function number(bounds: Omit<NumberShape, 'is' | 'whole'>): Typed<number, NumberShape> {
  return { is: 'number', whole: false, ...bounds };
}

/** A safe integer. */
/* @__NO_SIDE_EFFECTS__ */
export function whole(bounds: Omit<NumberShape, 'is' | 'whole'>): Typed<number, NumberShape> {
  return { is: 'number', whole: true, ...bounds };
}

/** One of some words. */
/* @__NO_SIDE_EFFECTS__ */
export function oneOf<const W extends string>(...values: readonly W[]): Typed<W> {
  return { is: 'one-of', values };
}

/** A number, or one of some words. */
/* @__NO_SIDE_EFFECTS__ */
export function either<const W extends string>(number: NumberShape, words: readonly W[]): Typed<number | W> {
  return { is: 'either', number, words };
}

/** A list of at least so many things of one shape. */
/* @__NO_SIDE_EFFECTS__ */
export function list<T>(of: Typed<T>, least?: number): Typed<T[]> {
  return { is: 'list', of, ...(least === undefined ? {} : { least }) };
}

/** Values of one shape under names of another. */
/* @__NO_SIDE_EFFECTS__ */
export function map<T>(names: TextShape, of: Typed<T>): Typed<Record<string, T>> {
  return { is: 'map', names, of };
}

/** Marks a member of {@link object} that may be missing. */
/* @__NO_SIDE_EFFECTS__ */
export function optional<T>(may: Typed<T>): Optional<T> {
  return { may };
}

/** An object; members that are not named here are passed over. */
/* @__NO_SIDE_EFFECTS__ */
export function object<M extends Members>(members: M): Typed<Filled<M>, ObjectShape> {
  const each = Object.entries<Member>(members);
  return {
    is: 'object',
    members: Object.fromEntries(each.map(([name, member]) => [name, 'may' in member ? member.may : member])),
    optional: each.filter(([, member]) => 'may' in member).map(([name]) => name),
    open: true,
  };
}

/** One of several objects, told apart by the word that stands under `tag`. */
/* @__NO_SIDE_EFFECTS__ */
export function choice<S extends ObjectShape>(tag: string, kinds: readonly S[]): Typed<TypeOf<S>, ChoiceShape> {
  return { is: 'choice', tag, of: Object.fromEntries(kinds.map((kind) => [wordOf(kind.members[tag]), kind])) };
}

function wordOf(shape: Shape | undefined): string {
  const word = shape?.is === 'one-of' ? shape.values[0] : undefined;
  if (typeof word !== 'string') throw new Error('a kind without a word of its own');
  return word;
}
