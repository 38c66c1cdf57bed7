/** What became of a text that somebody typed: a value, or one sentence on what is wrong with it. */
export type Parsed<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: string };

/** A value that was understood. */
export function understood<T>(value: T): Parsed<T> {
  return { ok: true, value };
}

/** A text that was not: one sentence, the user's words in backticks. */
export function refused<T>(problem: string): Parsed<T> {
  return { ok: false, problem };
}
