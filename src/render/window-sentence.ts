import type { Note, TaskState } from '../assess/assessment.js';
import { momentInWords } from './dates-in-words.js';

type WorkOn = Extract<Note, { is: 'work-on' }>;

/** What a rule on the time before a start has come to: when the work begins, from when on it counts, and when it was last done. */
export function windowSentence({ intended, done, window }: WorkOn, state: TaskState | undefined): string | null {
  if (window === undefined) return null;
  const begins = `work ${intended ? 'is to begin' : 'began'} on ${momentInWords(window.start)}`;
  const opens = momentInWords(window.opens);
  if (state === 'coming-up') return `${begins}, and what is done before ${opens} does not count for it`;
  if (state !== 'due') return `${begins}, and it was done ${done === null ? 'for it' : `on ${momentInWords(done)}`}`;
  const last = done === null ? 'there is no record that it was ever done' : `it was last done on ${momentInWords(done)}`;
  return `${begins}, it counts if done from ${opens} on, and ${last}`;
}
