/**
 * Shapes of JSON values, as far as the schema of the rule graph needs them.
 *
 * INVARIANT: a `choice` is told by one member, its tag, so that no value is looked at twice.
 */

/** What a value has to be. Objects have the members named and no others. */
export type Shape =
  | { readonly is: 'text' | 'flag' }
  /** `whole`: a safe integer. `over`: more than `least`, not equal to it. No number is infinite. */
  | { readonly is: 'number'; readonly whole: boolean; readonly least?: number; readonly over?: boolean; readonly most?: number }
  | { readonly is: 'one-of'; readonly values: readonly (string | number)[] }
  | { readonly is: 'list'; readonly of: Shape }
  /** Any member names, values of one shape. */
  | { readonly is: 'map'; readonly of: Shape }
  | { readonly is: 'object'; readonly members: Readonly<Record<string, Shape>>; readonly optional: readonly string[] }
  | { readonly is: 'choice'; readonly tag: string; readonly of: Readonly<Record<string, Shape>> }
  | { readonly is: 'named'; readonly name: string };

/** Shapes by the name under which others refer to them. */
export type Shapes = Readonly<Record<string, Shape>>;
