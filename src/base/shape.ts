/**
 * Shapes of JSON values: what a value that comes from outside has to be, as plain data that one short program goes by.
 *
 * Tables instead of a library for schemas, because these checks travel in every page that reads a graph or an entry.
 *
 * INVARIANT: a `choice` is told by one member, its tag, so that no value is looked at twice.
 */

/** What a value has to be. */
export type Shape =
  /** `least` and `most` bound its length in UTF-16 code units; every one of `forms` has to match, and `wanted` says in words what they ask for. */
  | {
      readonly is: 'text';
      readonly least?: number;
      readonly most?: number;
      readonly forms?: readonly RegExp[];
      readonly wanted?: string;
    }
  | { readonly is: 'flag' }
  /** `whole`: a safe integer. `over`: more than `least`, not equal to it. No number is infinite. */
  | { readonly is: 'number'; readonly whole: boolean; readonly least?: number; readonly over?: boolean; readonly most?: number }
  | { readonly is: 'one-of'; readonly values: readonly (string | number)[] }
  | { readonly is: 'list'; readonly of: Shape; readonly least?: number }
  /** Values of one shape, under any names that fit `names`. */
  | { readonly is: 'map'; readonly of: Shape; readonly names?: TextShape }
  /** The members named, and no others unless it is `open`. */
  | {
      readonly is: 'object';
      readonly members: Readonly<Record<string, Shape>>;
      readonly optional: readonly string[];
      readonly open?: boolean;
    }
  | { readonly is: 'choice'; readonly tag: string; readonly of: Readonly<Record<string, Shape>> }
  /** A number or one of some words: told apart by what the value is. */
  | { readonly is: 'either'; readonly number: NumberShape; readonly words: readonly string[] }
  | { readonly is: 'named'; readonly name: string };

/** The shape of a number. */
export type NumberShape = Extract<Shape, { readonly is: 'number' }>;
/** The shape of a text. */
export type TextShape = Extract<Shape, { readonly is: 'text' }>;
/** The shape of an object with members of its own. */
export type ObjectShape = Extract<Shape, { readonly is: 'object' }>;
/** The shape of one of several objects, told apart by a member. */
export type ChoiceShape = Extract<Shape, { readonly is: 'choice' }>;

/** Shapes by the name under which others refer to them; one that is not among them is read by somebody else. */
export type Shapes = Readonly<Record<string, Shape>>;
