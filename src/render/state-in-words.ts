/**
 * The states and the verdict, each with a word and a mark of its own, so that no colour is needed to tell them apart.
 */
import type { TaskState, Verdict } from '../assess/assessment.js';
import type { Style } from './style.js';

/** From the gravest to the least, the order of every list. */
export const STATES: readonly TaskState[] = ['overdue', 'due', 'unrecorded', 'unknown', 'coming-up', 'clear', 'resting'];

const WORDS: Readonly<Record<TaskState, string>> = {
  overdue: 'overdue',
  due: 'due',
  unrecorded: 'unrecorded',
  unknown: 'unknown',
  'coming-up': 'coming up',
  clear: 'clear',
  resting: 'resting',
};

/** `coming up`, `due`. */
export function stateInWords(state: TaskState): string {
  return WORDS[state];
}

// The fuller the square, the more of the limit is used up; questions are not squares.
const MARKS: Readonly<Record<TaskState, readonly [unicode: string, ascii: string]>> = {
  overdue: ['█', '!!'],
  due: ['■', '!'],
  unrecorded: ['¿', '0'],
  unknown: ['?', '?'],
  'coming-up': ['▪', '+'],
  clear: ['□', '-'],
  resting: ['·', '.'],
};

/** The mark of a state, two columns wide. */
export function stateMark(state: TaskState, style: Style): string {
  const [unicode, ascii] = MARKS[state];
  return (style.unicode ? unicode : ascii).padEnd(2);
}

const VERDICTS: Readonly<Record<Verdict, string>> = {
  held: 'Held: do not work the machine',
  'cannot-tell': 'Cannot tell: something that nobody knows could be a reason to hold the machine',
  'work-due-first': 'Work due first',
  ready: 'Ready',
};

/** The verdict on the machine, without a full stop. */
export function verdictInWords(verdict: Verdict): string {
  return VERDICTS[verdict];
}
