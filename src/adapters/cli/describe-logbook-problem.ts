import { assertNever } from '../../base/assert-never.js';
import { safeText } from '../../render/safe-text.js';
import type { LogbookProblem } from '../logbook/logbook.js';

/**
 * Says what a careful reader noticed about a logbook: `tractor.jsonl:12: this line is not used: …`.
 *
 * Nothing is ever dropped from the file; the sentence says what of it counts.
 */
export function describeLogbookProblem(path: string, problem: LogbookProblem): string {
  return `${path}:${problem.line}: ${safeText(sentence(problem))}`;
}

function sentence(problem: LogbookProblem): string {
  switch (problem.kind) {
    case 'unreadable':
      return `this line is not used: ${problem.what}.`;
    case 'changed':
      if (problem.acceptedAt !== null)
        return `this line, or one before it, was changed after it was written; line ${problem.acceptedAt} accepts that.`;
      return 'this line, or one before it, was changed after it was written. It is used as it stands.';
    case 'fork':
      return `this line follows line ${problem.from} and not the one before it: two copies of the logbook grew apart here. Both are used.`;
    case 'misnumbered':
      return `this line is not number ${problem.expected} as it should be: a line is missing or out of its place. It is used as it stands.`;
    case 'same-id':
      return `the id \`${problem.id}\` stands here again with other content. Both are used, this one as \`${problem.kept}\`.`;
    case 'strange-member':
      return `an entry of this kind has no \`${problem.name}\`${problem.meant === null ? '.' : `; did you mean \`${problem.meant}\`?`} It is kept, and not used.`;
    case 'torn-tail':
      return `the last line was not written to its end (${problem.bytes} bytes) and is not used.`;
    default:
      return assertNever(problem);
  }
}
