/** A table by single words, from rows that give several words, with spaces between them, the same value. */
export function byWord<T>(rows: readonly (readonly [words: string, value: T])[]): ReadonlyMap<string, T> {
  return new Map(rows.flatMap(([words, value]) => words.split(' ').map((word): [string, T] => [word, value])));
}
