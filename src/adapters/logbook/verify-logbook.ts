import type { ChainHead, Logbook, LogbookProblem } from './logbook.js';

/** What can be said for a logbook. */
export interface Verification {
  /** `intact`: all that is chained stands as it was written. `accepted`: every change was accepted later. `changed`: one was not. */
  readonly verdict: 'intact' | 'accepted' | 'changed' | 'cut-short';
  readonly chained: number;
  readonly plain: number;
  /** Lines that no hash covers yet; the next append covers them. */
  readonly uncovered: number;
  readonly head: ChainHead | null;
  readonly problems: readonly LogbookProblem[];
}

/**
 * Says whether the chain holds. Given a `head` noted earlier (on paper, in another place), also whether the end was cut off: a
 * chain by itself cannot show that its last lines are missing.
 */
export function verifyLogbook(logbook: Logbook, noted?: ChainHead): Verification {
  const { lines, problems, head } = logbook;
  const chained = lines.filter((line) => line.kind === 'chained').length;
  const breaks = problems.filter((problem) => problem.kind === 'changed' || problem.kind === 'misnumbered');
  const stands = noted === undefined || lines.some((line) => line.kind === 'chained' && line.seq === noted.seq && line.hash === noted.hash);
  const open = breaks.some((problem) => problem.acceptedAt === null);
  const verdict = open ? 'changed' : !stands ? 'cut-short' : breaks.length > 0 ? 'accepted' : 'intact';
  return { verdict, chained, plain: lines.length - chained, uncovered: logbook.uncovered.length, head, problems };
}
