/** Those of some clauses that can be of a kind. */
type OfKind<C, K> = C extends { readonly kind: infer Kinds } ? (K extends Kinds ? C : never) : never;

const NONE: readonly never[] = [];

/**
 * The clauses of one kind, in the order written.
 *
 * Every task is asked for nearly all kinds and has few, so where there is none, nothing is made.
 *
 * @example clausesOf(task.clauses, 'every').map(({ plan }) => plan)
 */
export function clausesOf<C extends { readonly kind: string }, K extends C['kind']>(
  clauses: readonly C[],
  kind: K,
): readonly OfKind<C, K>[] {
  let found: OfKind<C, K>[] | undefined;
  for (let index = 0; index < clauses.length; index += 1) {
    const clause = clauses[index];
    if (clause !== undefined && isOf(clause, kind)) (found ??= []).push(clause);
  }
  return found ?? NONE;
}

function isOf<C extends { readonly kind: string }, K extends C['kind']>(clause: C, kind: K): clause is C & OfKind<C, K> {
  return clause.kind === kind;
}
