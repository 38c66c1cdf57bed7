/**
 * How much is told of a schedule that is wrong in very many places.
 */
import type { Span } from '../base/span.js';
import { collect } from '../diagnostics/collect.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diagnostic } from './report.js';

/** How many of them keep the schedule from being compiled. */
export function countErrors(found: readonly Diagnostic[]): number {
  return found.reduce((count, { severity }) => count + (severity === 'error' ? 1 : 0), 0);
}

/**
 * The first `most` mistakes in reading order with what else is said up to the last of them, and a word that there are more. All of it where
 * there are no more.
 */
export function told(found: readonly Diagnostic[], most: number): readonly Diagnostic[] {
  if (countErrors(found) <= most) return found;
  const ordered = collect(found);
  let errors = 0;
  const end = ordered.findIndex(({ severity }) => severity === 'error' && ++errors === most);
  const last = ordered[end];
  // The same mistake may have been found twice.
  if (last === undefined || errors < most) return ordered;
  return [...ordered.slice(0, end + 1), noMoreTold(last.at, most)];
}

/** The word that there are more mistakes than the `most` that are told; `at` is the last of those. */
export function noMoreTold(at: Span, most: number): Diagnostic {
  return diagnostic('limitReached', {
    at,
    message: `After ${most} mistakes no more are told: this is the last of them.`,
    help: 'Put these right first, and check again.',
  });
}
