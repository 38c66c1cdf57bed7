const NONE: readonly never[] = [];

/** Those of some clauses that can be of a kind. */
type OfKind<C, K> = C extends { readonly kind: infer Kinds } ? (K extends Kinds ? C : never) : never;

/**
 * The clauses of one kind, in the order written.
 *
 * Every task is asked for nearly all kinds, and has few: where there is none, nothing is made.
 *
 * @example clausesOf(task.clauses, 'every').map(({ plan }) => plan)
 */
export function clausesOf<C extends { readonly kind: string }, K extends C['kind']>(
  clauses: readonly C[],
  kind: K,
): readonly OfKind<C, K>[] {
  const isOfKind = (clause: C): clause is C & OfKind<C, K> => clause.kind === kind;
  return clauses.some(isOfKind) ? clauses.filter(isOfKind) : NONE;
}
